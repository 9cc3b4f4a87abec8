import { describe, expect, it } from 'vitest';
import type { Diagnostic } from '../../../src/diagnostics/diagnostic.ts';
import { renderJson, renderText } from '../../../src/diagnostics/render.ts';

const HOME = `${Array.from({ length: 13 }, (_, index) => `# line ${index + 1}`).join('\n')}\n    outlet: wall-dial\r\n`;
const pump: Diagnostic = {
  code: 'pump-step',
  kind: 'cannot be done',
  weight: 'error',
  place: { file: 'home.yaml', line: 14, column: 13, length: 9 },
  because: 'wall-dial has 15 min pins (line 4); the pump may run 5 min at most (line 18)',
  instead: "put a programmable timer between them, and name it as the pump's outlet",
};
const sources = (text: string) => new Map([['home.yaml', { shown: 'home.yaml', text }]]);
const at = (column: number, length: number, line = 1): Diagnostic => ({
  ...pump,
  place: { file: 'home.yaml', line, column, length },
});
const lines = (text: string): readonly string[] => text.split('\n');

describe('a message as text', () => {
  it('stands as the house lays it out', () => {
    expect(renderText([pump], sources(HOME))).toBe(`home.yaml:14:13  cannot be done (pump-step)
  >     outlet: wall-dial
                ~~~~~~~~~
  because  wall-dial has 15 min pins (line 4); the pump may run 5 min at most (line 18)
  instead  put a programmable timer between them, and name it as the pump's outlet
`);
  });

  it('says nothing instead where there is nothing to do, and no place where there is none', () => {
    const bare = { ...pump, place: null, instead: '' };
    expect(renderText([bare], sources(HOME))).toBe(`cannot be done (pump-step)\n  because  ${pump.because}\n`);
  });

  it('underlines by cells: wide characters twice, combining marks not at all', () => {
    const [, line, marks] = lines(renderText([at(7, 3)], sources('nom: 日本 cafe\u0301x')));
    expect(line).toBe('  > nom: 日本 cafe\u0301x');
    // "nom: " is 5 cells and 日本 is 4, so column 7 (本) begins at cell 7 of the line; 本, a space and c are 4 cells.
    expect(marks).toBe(`    ${' '.repeat(7)}~~~~`);
  });

  it('never sends a control or direction character to the screen', () => {
    const evil = 'name: \u001b[2J\u202eabc';
    const text = renderText([{ ...at(7, 5), because: evil, instead: evil }], sources(evil));
    expect(text).not.toMatch(/[^\P{Cc}\n]|\u202e/u);
  });

  it('cuts a long line around the place, which stays in sight', () => {
    const long = `${'x'.repeat(500)}HERE${'y'.repeat(500)}`;
    const [, line = '', marks = ''] = lines(renderText([at(501, 4)], sources(long), { columns: 80 }));
    expect(line.length).toBeLessThanOrEqual(80);
    expect(line.slice(marks.indexOf('~'), marks.lastIndexOf('~') + 1)).toBe('HERE');
  });

  it('wraps sentences under their own beginning', () => {
    const text = renderText([pump], sources(HOME), { columns: 60 });
    expect(text).toContain(
      '  because  wall-dial has 15 min pins (line 4); the pump may\n           run 5 min at most (line 18)\n',
    );
    for (const line of lines(text)) expect(line.length).toBeLessThanOrEqual(60);
  });

  it('counts what it does not show', () => {
    const many = Array.from({ length: 45 }, (_, index) => ({ ...pump, because: `fact ${index}` }));
    expect(renderText(many, sources(HOME)).endsWith('\n5 more messages not shown\n')).toBe(true);
    expect(renderText(many.slice(0, 41), sources(HOME))).toContain('1 more message not shown');
  });

  it('keeps its words the same in colour', () => {
    const coloured = renderText([pump], sources(HOME), { colour: true });
    expect(coloured).toContain('\u001b[');
    expect(coloured.replace(/\p{Cc}\[[\d;]*m/gu, '')).toBe(renderText([pump], sources(HOME)));
  });

  it('shows no line that the file has not', () => {
    expect(lines(renderText([at(1, 1, 99)], sources(HOME)))[1]).toMatch(/^ {2}because/u);
    expect(lines(renderText([pump], new Map()))[1]).toMatch(/^ {2}because/u);
  });
});

describe('a message as JSON', () => {
  it('has its fields in a fixed order, null where there is no place', () => {
    const [first, second] = JSON.parse(renderJson([pump, { ...pump, place: null }])) as Record<string, unknown>[];
    expect(Object.keys(first ?? {})).toEqual([
      'code',
      'kind',
      'weight',
      'file',
      'line',
      'column',
      'length',
      'because',
      'instead',
    ]);
    expect(first).toMatchObject({ file: 'home.yaml', line: 14, column: 13, length: 9 });
    expect(second).toMatchObject({ file: null, line: null });
  });
});
