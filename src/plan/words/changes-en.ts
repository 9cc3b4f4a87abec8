/** What stands in the change sheet, in English. */
export const changesEn = {
  title: (household: string) => `${household}: what to change`,
  since: (on: string, before: string) => `On ${on}, against the plan made on ${before}. In the order of the shelf.`,
  nothing: 'Nothing is to be changed.',
  noEarlier: 'There is no earlier plan to compare with: set everything as the settings say.',
  newDevice: (device: string) => `${device}: new in the plan. Set it as the settings say.`,
  goneDevice: (device: string) => `${device}: no longer in the plan. Nothing is to be set on it.`,
  today: (what: string) => `Now: ${what}.`,
  nothingNow: 'Now: nothing.',
  afterwards: (what: string) => `It is then ${what}.`,
  later: (dates: string) => `Coming changes that are new or other than before: ${dates}.`,
  dropped: (dates: string) => `Changes that fall away: ${dates}.`,
  comesOn: (steps: string) => `on: ${steps}`,
  goesOff: (steps: string) => `off: ${steps}`,
  mists: (enclosure: string) => `Mists of ${enclosure}`,
  mistsOn: (enclosure: string, device: string) => `Mists of ${enclosure}, on ${device}`,
  add: (entries: string) => `add ${entries}`,
  alter: (entries: string) => `alter ${entries}`,
  remove: (times: string) => `delete ${times}`,
  keep: (times: string) => `leave ${times}`,
  entry: (at: string, seconds: number) => `${at} for ${seconds} s`,
  altered: (at: string, from: number, to: number) => `${at} from ${from} s to ${to} s`,
  loads: 'What hangs where',
  plugsIn: (what: string, to: string) => `${what}: now on ${to}`,
  moves: (what: string, from: string, to: string) => `${what}: from ${from} to ${to}`,
  unplugged: (what: string, from: string) => `${what}: no longer on ${from}`,
  people: 'What people do',
  feeds: (enclosure: string, added: number, removed: number, altered: number) => {
    const parts = [
      ...(added > 0 ? [`${added} more`] : []),
      ...(removed > 0 ? [`${removed} fewer`] : []),
      ...(altered > 0 ? [`${altered} other than before`] : []),
    ];
    return `Feeds of ${enclosure}: ${parts.join(', ')}`;
  },
  firstFeed: (date: string, before: string, after: string) => `the first on ${date}: ${before} becomes ${after}`,
  noFeed: 'no feed',
  choreNew: (title: string, dates: string) => `New: ${title}${dates === '' ? '' : `, first on ${dates}`}`,
  choreGone: (title: string) => `No longer: ${title}`,
  choreChanged: (title: string, dates: string) =>
    `${title}: other dates${dates === '' ? '' : `, the first of them ${dates}`}`,
  stays: 'What stays as it is',
  staying: {
    dial: (device: string) => device,
    mists: (enclosure: string) => `mists of ${enclosure}`,
    feeds: (enclosure: string) => `feeds of ${enclosure}`,
  },
};
