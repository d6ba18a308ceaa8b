import type { Bounds } from '../../core/geometry/types';
import { tag } from './tags';
import type { DxfRecord, Tag } from './tags';

/** The two layouts that every file of this form has; the sheet stays empty. */
export const LAYOUTS = [
  { name: 'Model', block: '*Model_Space', handle: 'layout:model' },
  { name: 'Layout1', block: '*Paper_Space', handle: 'layout:sheet' },
] as const;

/** The plot style that layers point at. */
export const PLOT_STYLE = 'plot style:normal';

const LAYOUT_DICTIONARY = 'dictionary:layouts';
const PLOT_STYLES = 'dictionary:plot styles';

const real = (pairs: readonly (readonly [number, number])[]): readonly Tag[] => pairs.map(([code, value]) => tag(code, value));

/** A4, lying, no printer named; nothing is plotted from it. 1024 marks the model's own settings. */
function plotSettings(model: boolean): readonly Tag[] {
  return [
    tag(100, 'AcDbPlotSettings'), tag(1, ''), tag(2, 'none_device'), tag(4, ''), tag(6, ''),
    ...real([[40, 0], [41, 0], [42, 0], [43, 0], [44, 297], [45, 210], [46, 0], [47, 0], [48, 0], [49, 0]]),
    ...real([[140, 0], [141, 0], [142, 1], [143, 1], [70, model ? 1024 : 0], [72, 1], [73, 0], [74, 5]]),
    tag(7, ''), ...real([[75, 16], [76, 0], [77, 2], [78, 300], [147, 1], [148, 0], [149, 0]]),
  ];
}

function layout(order: number, blockRecord: string, extents: Bounds): DxfRecord {
  const { name, handle } = LAYOUTS[order] ?? LAYOUTS[0];
  const { minX, minY, maxX, maxY } = extents;
  return {
    type: 'LAYOUT',
    handle,
    owner: LAYOUT_DICTIONARY,
    body: [
      ...plotSettings(order === 0),
      tag(100, 'AcDbLayout'), tag(1, name), tag(70, 1), tag(71, order),
      ...real([[10, minX], [20, minY], [11, maxX], [21, maxY], [12, 0], [22, 0], [32, 0]]),
      ...real([[14, minX], [24, minY], [34, 0], [15, maxX], [25, maxY], [35, 0], [146, 0], [13, 0], [23, 0], [33, 0]]),
      ...real([[16, 1], [26, 0], [36, 0], [17, 0], [27, 1], [37, 0], [76, 1]]),
      tag(330, blockRecord),
    ],
  };
}

const dictionary = (handle: string, owner: string, entries: readonly (readonly [string, string])[], type = 'DICTIONARY'): DxfRecord => ({
  type,
  handle,
  owner,
  body: [tag(100, 'AcDbDictionary'), tag(281, 1), ...entries.flatMap(([name, to]) => [tag(3, name), tag(350, to)])],
});

/**
 * The objects section: dxf-writer's root and groups, and what it leaves out: the layouts and the plot style.
 * @param root handle of the root dictionary, @param groups of its dictionary of groups
 * @param blockRecord handle of the block record of each layout's block
 */
export function finishedObjects(root: string, groups: string, blockRecord: (block: string) => string, extents: Bounds): readonly DxfRecord[] {
  const sheet: Bounds = { minX: 0, minY: 0, maxX: 297, maxY: 210 };
  const styles = dictionary(PLOT_STYLES, root, [['Normal', PLOT_STYLE]], 'ACDBDICTIONARYWDFLT');
  return [
    dictionary(root, '0', [['ACAD_GROUP', groups], ['ACAD_LAYOUT', LAYOUT_DICTIONARY], ['ACAD_PLOTSTYLENAME', PLOT_STYLES]]),
    dictionary(groups, root, []),
    dictionary(LAYOUT_DICTIONARY, root, LAYOUTS.map((l) => [l.name, l.handle])),
    { ...styles, body: [...styles.body, tag(100, 'AcDbDictionaryWithDefault'), tag(340, PLOT_STYLE)] },
    { type: 'ACDBPLACEHOLDER', handle: PLOT_STYLE, owner: PLOT_STYLES, body: [] },
    layout(0, blockRecord(LAYOUTS[0].block), extents),
    layout(1, blockRecord(LAYOUTS[1].block), sheet),
  ];
}

/** The classes of those objects that are no built-in ones. Source: the published DXF reference, CLASSES section; counts are ours. */
export const CLASSES: readonly (readonly Tag[])[] = (
  [
    ['ACDBDICTIONARYWDFLT', 'AcDbDictionaryWithDefault', 1],
    ['ACDBPLACEHOLDER', 'AcDbPlaceHolder', 1],
    ['LAYOUT', 'AcDbLayout', LAYOUTS.length],
  ] as const
).map(([type, name, count]) => [
  tag(0, 'CLASS'), tag(1, type), tag(2, name), tag(3, 'ObjectDBX Classes'), tag(90, 0), tag(91, count), tag(280, 0), tag(281, 0),
]);
