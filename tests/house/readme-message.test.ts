/** The message that the README shows is one of the gallery, word for word. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';

const README = readFileSync(new URL('../../README.md', import.meta.url), 'utf8');
const SAID = readFileSync(new URL('../errors/cases/heat-without-thermostat.txt', import.meta.url), 'utf8');

it('the message of the README is what the tool says', () => {
  expect(README).toContain(`\`\`\`\n${SAID.replace('heat-without-thermostat.yaml', 'home.yaml').trimEnd()}\n\`\`\``);
});
