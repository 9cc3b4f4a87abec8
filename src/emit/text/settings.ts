/** `settings.txt`: what to set on each device, in words, for a person at the shelf. One file a section; each knows the plan alone. */
import type { Plan } from '../../plan/plan.ts';
import { words } from '../../plan/words/words.ts';
import { cautionSection, clockSection, powerCutSection } from './settings-care.ts';
import { dialSections } from './settings-dials.ts';
import { dateWords, type Section } from './settings-section.ts';
import { waterSections } from './settings-water.ts';

const SECTIONS: readonly ((plan: Plan) => readonly Section[])[] = [
  dialSections,
  waterSections,
  clockSection,
  powerCutSection,
  cautionSection,
];

/** Returns the whole sheet, lines at most 100 characters wide where words allow. */
export function settingsText(plan: Plan): string {
  const shelf = words(plan.language).shelf;
  const head = [
    shelf.title(plan.name),
    shelf.madeFor(dateWords(plan.from, shelf), dateWords(plan.to, shelf), plan.revision),
  ];
  const sections = SECTIONS.flatMap((section) => section(plan)).filter(({ lines }) => lines.length > 0);
  const blocks = sections.map(({ heading, lines }) =>
    [heading, '-'.repeat([...heading].length), ...lines.flatMap(wrapped)].join('\n'),
  );
  return `${[head.join('\n'), ...blocks].join('\n\n')}\n`;
}

const WIDTH = 100;

/** Breaks a line at spaces, keeping its indent. */
function wrapped(line: string): readonly string[] {
  const indent = /^ */.exec(line)?.[0] ?? '';
  const lines: string[] = [];
  let current = '';
  for (const word of line.trim().split(' ')) {
    const longer = current === '' ? `${indent}${word}` : `${current} ${word}`;
    if (longer.length > WIDTH && current !== '') {
      lines.push(current);
      current = `${indent}  ${word}`;
    } else current = longer;
  }
  return [...lines, current];
}
