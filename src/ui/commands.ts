/** What can be done from anywhere: one record each, from which the buttons, the keys and the Keys panel are made. */
import { bench, choose, goTo, redo, turnToPart, undo, type Bench } from '../store/bench';
import { downloadDxf } from './files/downloads';
import { saveJobToFile } from './files/jobFile';
import { deleteChosen, deletable } from './card/deleteChosen';
import { matches } from './keys/matches';
import { askToPrint } from './papers/paperSetting';
import { isDim, say, screen, setLight } from './screen';

export interface Command {
  readonly id: string;
  readonly label: string;
  /** As shown in the Keys panel and read by `matches`; several where there are several ways. */
  readonly keys: readonly string[];
  /** True, or a plain sentence why not. */
  readonly can: (state: Bench) => true | string;
  readonly run: () => void;
  /** What it would do now: `Undo peg leg 110 to 112`. */
  readonly now?: (state: Bench) => string;
  /** Whether the keys are left to a field that has the focus. */
  readonly notInFields?: boolean;
}

const always = (): true => true;

/** The part `step` further on in the job, round the corner at the ends. */
function stepPart(step: number): void {
  const { job, part } = bench.getState();
  const at = job.parts.findIndex(({ id }) => id === part);
  const next = job.parts[(at + step + job.parts.length) % job.parts.length];
  if (next) turnToPart(next.id);
}

export const undoCommand: Command = {
  id: 'undo',
  label: 'Undo',
  keys: ['Ctrl Z'],
  can: ({ past }) => past.length > 0 || 'There is nothing to undo yet.',
  now: ({ past }) => `Undo ${past.at(-1)?.label ?? ''}`.trim(),
  run: () => {
    const label = bench.getState().past.at(-1)?.label;
    undo();
    if (label) say(`Undone: ${label}.`);
  },
};

export const redoCommand: Command = {
  id: 'redo',
  label: 'Redo',
  keys: ['Ctrl Shift Z', 'Ctrl Y'],
  can: ({ future }) => future.length > 0 || 'There is nothing to redo.',
  now: ({ future }) => `Redo ${future[0]?.label ?? ''}`.trim(),
  run: () => {
    const label = bench.getState().future[0]?.label;
    redo();
    if (label) say(`Done again: ${label}.`);
  },
};

export const keysCommand: Command = {
  id: 'keys',
  label: 'Keys',
  keys: ['F1'],
  can: always,
  run: () => screen.setState(({ keysOpen }) => ({ keysOpen: !keysOpen })),
};

export const lightCommand: Command = {
  id: 'light',
  label: 'Day light or dim light',
  keys: [],
  can: always,
  run: () => setLight(isDim(screen.getState()) ? 'day' : 'dim'),
};

export const saveCommand: Command = {
  id: 'save',
  label: 'Save the job to a file',
  keys: ['Ctrl S'],
  can: always,
  run: saveJobToFile,
};

export const dxfCommand: Command = {
  id: 'dxf',
  label: 'DXF of the part for the bureau',
  keys: ['Ctrl E'],
  can: always,
  run: () => void downloadDxf(bench.getState().part),
};

export const printCommand: Command = {
  id: 'print',
  label: 'Print the template; in Papers, what is in view',
  keys: ['Ctrl P'],
  can: always,
  run: askToPrint,
};

export const partsCommand: Command = { id: 'parts', label: 'Go to Parts', keys: ['Alt 1'], can: always, run: () => goTo('parts') };
export const compareCommand: Command = { id: 'compare', label: 'Go to Compare stock', keys: ['Alt 5'], can: always, run: () => goTo('compare') };
export const stockCommand: Command = { id: 'stock', label: 'Go to Stock and sizes', keys: ['Alt 2'], can: always, run: () => goTo('stock') };
export const papersCommand: Command = { id: 'papers', label: 'Go to Papers', keys: ['Alt 4'], can: always, run: () => goTo('papers') };
export const filesCommand: Command = { id: 'files', label: 'Go to Files', keys: ['Alt 3'], can: always, run: () => goTo('files') };

const nextPart: Command = { id: 'next-part', label: 'Next part', keys: ['Alt PageDown'], can: always, run: () => stepPart(1) };
const previousPart: Command = { id: 'previous-part', label: 'Previous part', keys: ['Alt PageUp'], can: always, run: () => stepPart(-1) };

const deleteCommand: Command = {
  id: 'delete',
  label: 'Delete the chosen leg or hole',
  keys: ['Delete'],
  can: deletable,
  run: deleteChosen,
  notInFields: true,
};

const letGo: Command = {
  id: 'let-go',
  label: 'Let go of what is chosen',
  keys: ['Esc'],
  can: ({ chosen }) => chosen !== null || 'Nothing is chosen.',
  run: () => choose(null),
  notInFields: true,
};

export const COMMANDS: readonly Command[] = [
  undoCommand, redoCommand, saveCommand, dxfCommand, printCommand, deleteCommand, letGo, previousPart, nextPart, partsCommand, compareCommand, stockCommand, papersCommand, filesCommand, keysCommand, lightCommand,
];

const inField = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement && target.matches('input, select, textarea, [contenteditable]');

/** Runs the command a key stands for. @returns whether there was one */
export function pressKey(event: KeyboardEvent): boolean {
  const command = COMMANDS.find(({ keys }) => keys.some((each) => matches(each, event)));
  if (!command || event.defaultPrevented || (command.notInFields && inField(event.target))) return false;
  event.preventDefault();
  const can = command.can(bench.getState());
  if (can === true) command.run();
  else say(can);
  return true;
}
