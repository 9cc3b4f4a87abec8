/** What there is to know about the water of an enclosure, as a sheet says it: with the enclosure by its name, a sentence a thought. */
import { catalogue } from '../../diagnostics/catalogue.ts';
import type { Wording } from '../../diagnostics/diagnostic.ts';
import type { MistAdvice, MistPlan, Plan } from '../plan.ts';
import { words } from '../words/words.ts';

type Values = NonNullable<MistAdvice['values']>;

/**
 * Returns the advice of an enclosure, a line each. Messages of the catalogue are in English alone: a sheet in another language says how many
 * there are, and where they stand.
 */
export function adviceWords(plan: Pick<Plan, 'enclosures' | 'language'>, mist: MistPlan): readonly string[] {
  const { water } = words(plan.language);
  const enclosure = plan.enclosures.find(({ id }) => id === mist.enclosure)?.name ?? mist.enclosure;
  const isMessage = ({ about }: MistAdvice) => about !== undefined;
  const isForeign = plan.language !== 'en';
  const messages = mist.advice.filter(isMessage);
  return [
    ...mist.advice
      .filter((advice) => !(isForeign && isMessage(advice)))
      .map((advice) => (isMessage(advice) ? messageWords(advice, enclosure) : noteWords(plan, advice, enclosure))),
    ...(isForeign && messages.length > 0 ? [water.inEnglish(messages.length)] : []),
  ];
}

/** Returns a note in the language of the plan, with the enclosure by its name. */
export function noteWords(
  { language }: Pick<Plan, 'language'>,
  { code, message, values }: MistAdvice,
  name: string,
): string {
  const notes = words(language).water.notes as unknown as Readonly<Record<string, (values: Values) => string>>;
  const note = Object.hasOwn(notes, code) ? notes[code] : undefined;
  return note && values ? note({ ...values, enclosure: name }) : sentence(message);
}

function messageWords({ code, message, values }: MistAdvice, enclosure: string): string {
  if (!values || !Object.hasOwn(catalogue, code)) return sentence(message);
  const { because, instead } = catalogue[code as keyof typeof catalogue] as unknown as Wording<Values>;
  const targets: Readonly<Record<string, string>> = words('en').water.targets;
  const target = targets[String(values.target)] ?? String(values.target);
  const told = { ...values, enclosure, ...(values.target === undefined ? {} : { target }) };
  return [because(told), instead(told)]
    .filter((text) => text !== '')
    .map(sentence)
    .join(' ');
}

function sentence(text: string): string {
  const { shelf } = words('en');
  return text.endsWith('.') ? shelf.capital(text) : shelf.sentence(shelf.capital(text));
}
