/** Words for what can be printed. */
import type { PaperKind } from '../../drawing/papers/types';

interface KindWords {
  readonly name: string;
  /** What it is for, in a word or two. */
  readonly use: string;
  /** What it is called in the name of a file. */
  readonly file: string;
}

export const KINDS: Readonly<Record<PaperKind, KindWords>> = {
  template: { name: 'Template', use: 'full size, to cut by', file: 'template' },
  wrap: { name: 'Wrap-round', use: 'to drill once bent', file: 'wrap-round template' },
  sheet: { name: 'Shop sheet', use: 'for the bench', file: 'shop sheet' },
};
