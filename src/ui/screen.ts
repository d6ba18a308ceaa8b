/** What the screen remembers that is no part of the job: panels that are open, the light, the last thing said. */
import { createStore } from 'zustand/vanilla';
import { useStore } from 'zustand';
import { bench } from '../store/bench';
import type { Fault } from '../job/schemaFaults';

export type Light = 'day' | 'dim';

export interface Screen {
  readonly keysOpen: boolean;
  /** Whether a shape for a new part is being chosen. */
  readonly newPartOpen: boolean;
  /** The light that was chosen; null while the system decides. */
  readonly light: Light | null;
  readonly systemDim: boolean;
  /** Id of the stock in view in the stock room. */
  readonly stock: string | null;
  /** Read out to those who listen to the screen. */
  readonly said: string;
  /** What came of the last file that was asked for; stands beside the buttons. */
  readonly outcome: Outcome | null;
  /** What kept the last file from being opened. */
  readonly refused: { readonly name: string; readonly faults: readonly Fault[] } | null;
}

export interface Outcome {
  readonly good: boolean;
  readonly lines: readonly string[];
}

const LIGHT_KEY = 'bendwright light';

function keptLight(): Light | null {
  const light = document.documentElement.dataset['light'];
  return light === 'day' || light === 'dim' ? light : null;
}

const system = matchMedia('(prefers-color-scheme: dark)');

export const screen = createStore<Screen>()(() => ({
  keysOpen: false,
  newPartOpen: false,
  light: keptLight(),
  systemDim: system.matches,
  stock: null,
  said: '',
  outcome: null,
  refused: null,
}));

system.addEventListener('change', () => screen.setState({ systemDim: system.matches }));

export const useScreen = <Slice>(read: (state: Screen) => Slice): Slice => useStore(screen, read);

export const isDim = (state: Screen): boolean => (state.light === null ? state.systemDim : state.light === 'dim');

export function setLight(light: Light): void {
  document.documentElement.dataset['light'] = light;
  screen.setState({ light });
  try {
    localStorage.setItem(LIGHT_KEY, light);
  } catch {
    // Without storage the light is good until the page is left; nothing is lost that the maker made.
  }
}

/** Reads a sentence out; the same one twice is read twice. */
export const say = (sentence: string): void => screen.setState((state) => ({ said: state.said === sentence ? `${sentence}\u00A0` : sentence }));

export const setOutcome = (outcome: Outcome | null): void => {
  screen.setState({ outcome });
  if (outcome) say(outcome.lines.join(' '));
};

/** What came of a file is old news once the job has changed. @returns stops it */
export function forgetOutcomes(): () => void {
  return bench.subscribe((now, before) => {
    if (now.job !== before.job && screen.getState().outcome) screen.setState({ outcome: null });
  });
}
