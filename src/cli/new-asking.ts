/** Asks the questions of `new` at a terminal, one after the other, until every answer will do. */
import type { Answers, Question, QuestionKey } from './new-questions.ts';
import { UsageError } from './usage.ts';
import type { World } from './world.ts';

/** Returns the answers to all questions, those that were given included; an end of input (Ctrl-D, Ctrl-C) writes nothing. */
export async function askMissing(
  list: readonly Question[],
  given: Answers,
  file: string,
  world: World,
): Promise<Answers> {
  const answers = new Map<QuestionKey, string>();
  const terminal = await world.terminal();
  try {
    world.say(
      `A few questions for ${file}. Enter takes what stands in brackets; all of it can be changed in the file.\n`,
    );
    let at = 0;
    for (let question = list[at]; question; question = list[at]) {
      const isTaken = await answer(question, given.get(question.key), answers, terminal.question, world.say);
      const before = list[at - 1];
      if (isTaken) at += 1;
      else if (before && !given.has(before.key)) at -= 1;
    }
  } catch (error) {
    if (!(error instanceof Error) || error.name !== 'AbortError') throw error;
    world.say('\n');
    throw new UsageError('ended early; nothing is written');
  } finally {
    terminal.close();
  }
  return answers;
}

/** Notes the answer to one question; false where the question before it is to be asked again. */
async function answer(
  { key, why, ask, preset, take, isAsked }: Question,
  given: string | undefined,
  answers: Map<QuestionKey, string>,
  question: (text: string) => Promise<string>,
  say: (text: string) => void,
): Promise<boolean> {
  if (given === undefined && isAsked?.(answers) === false) return true;
  const brackets = preset(answers) === '' ? '' : ` [${preset(answers)}]`;
  for (let lead = `\n${why}`; ; lead = '') {
    const said = given ?? ((await question(`${lead}${ask}${brackets}: `)).trim() || preset(answers));
    const taken = take(said, answers);
    if ('value' in taken) {
      answers.set(key, taken.value);
      return true;
    }
    if (given !== undefined) throw new UsageError(`--${key} ${given}: ${taken.fault}`);
    say(`  ${taken.fault}\n`);
    if (taken.isBack) return false;
  }
}
