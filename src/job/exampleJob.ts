/**
 * The finished example that Bendwright opens on: a roof-vent peg stay for a garden-model greenhouse. A front strap with a row of
 * peg holes is riveted on a slotted back plate; a lever works in the slot; a wall bracket carries the whole.
 * All sizes are invented for this example. Densities are handbook values from memory.
 */
import { cutout, plainBend, plainLeg, roundHole } from './pieces';
import type { Job, JobPart, JobStock } from './schema';

const stocks: JobStock[] = [
  { id: 'brass', name: 'Brass, half hard, 1.6 sheet', metal: 'brass', thickness: '1.6', radius: '2', density: '8470', rule: { kind: 'fixedK', k: '0.414' } },
  { id: 'steel', name: 'Mild steel, 1.5 sheet', metal: 'steel', thickness: '1.5', radius: 'thickness', density: '7850', rule: { kind: 'din6935' } },
  {
    id: 'steel-inch',
    name: 'Mild steel, 1/16 in strip',
    metal: 'steel',
    thickness: '1/16in',
    radius: 'thickness',
    density: '7850',
    rule: { kind: 'handbook', metal: 'half-hard' },
  },
  { id: 'stainless', name: 'Stainless, 1.0 sheet', metal: 'stainless', thickness: '1', radius: '1.5*thickness', density: '7900', rule: { kind: 'din6935' } },
];

const backPlate: JobPart = {
  id: 'back-plate',
  name: 'Back plate',
  stock: 'steel',
  quantity: '12',
  legs: [
    plainLeg('plate', 'Plate', 'plateLength', 'plateHeight', {
      startShape: { kind: 'radius', radius: '4' },
      endShape: { kind: 'radius', radius: '4' },
      cutouts: [
        roundHole('corner', 'Corner hole', '4.5', '0', {
          along: { from: 'middle', basis: 'outside', distance: '0' },
          pattern: { kind: 'grid', alongCount: '2', alongPitch: 'plateLength - 14', acrossCount: '2', acrossPitch: 'plateHeight - 14' },
        }),
        roundHole('rivet', 'Rivet hole', 'rivetHole', '14', { across: { from: 'centre', distance: '12' } }),
        roundHole('pegs', 'Peg hole', 'pegHole', '14 + footToPeg', {
          across: { from: 'centre', distance: '12' },
          pattern: { kind: 'row', direction: 'along', count: '7', pitch: 'pitch' },
        }),
        cutout('slot', 'Lever slot', { kind: 'slot', length: '110', width: '6.4', turn: '0' }, '95', {
          across: { from: 'centre', distance: '-12' },
        }),
        roundHole('bracket', 'Bracket hole', '5/32in', '172', { pattern: { kind: 'row', direction: 'across', count: '2', pitch: '1/2in' } }),
      ],
    }),
  ],
};

const frontStrap: JobPart = {
  id: 'strap',
  name: 'Front strap',
  stock: 'brass',
  quantity: '12',
  legs: [
    plainLeg('foot', 'Foot', '26', '16', {
      startShape: { kind: 'round' },
      cutouts: [roundHole('rivet', 'Foot hole', 'rivetHole', '8')],
    }),
    plainLeg('crank', 'Crank', '18', '16', { startBasis: 'centre line', endBasis: 'centre line', bend: plainBend('foot', '45') }),
    plainLeg('peg-leg', 'Peg leg', '6*pitch + 22', '16', {
      bend: plainBend('crank', '45', 'down'),
      cutouts: [
        roundHole('pegs', 'Peg hole', 'pegHole', '7.5', {
          pattern: { kind: 'row', direction: 'along', count: '7', pitch: 'pitch' },
        }),
      ],
    }),
    plainLeg('lip', 'Lip', '12', '16', {
      startBasis: 'inside',
      endBasis: 'inside',
      endShape: { kind: 'radius', radius: '2' },
      bend: plainBend('peg-leg', '90'),
    }),
  ],
};

const wallBracket: JobPart = {
  id: 'bracket',
  name: 'Wall bracket',
  stock: 'steel-inch',
  quantity: '12',
  legs: [
    plainLeg('wall', 'Wall leg', '1 3/8in', '5/8in', {
      startShape: { kind: 'radius', radius: '1/8in' },
      cutouts: [
        roundHole('fixing', 'Fixing hole', '5/32in', '5/16in', { pattern: { kind: 'row', direction: 'along', count: '2', pitch: '1/2in' } }),
      ],
    }),
    plainLeg('arm', 'Arm', 'full 6in', '5/8in', {
      endWidth: '1/2in',
      endShape: { kind: 'round' },
      bend: plainBend('wall', '105'),
      cutouts: [roundHole('pivot', 'Pivot hole', '5/32in', '1/4in', { along: { from: 'end', basis: 'outside', distance: '1/4in' } })],
    }),
  ],
};

const lever: JobPart = {
  id: 'lever',
  name: 'Lever',
  stock: 'stainless',
  quantity: '6',
  legs: [
    plainLeg('lever', 'Lever', '84', '14', {
      endWidth: '9',
      startShape: { kind: 'round' },
      endShape: { kind: 'round' },
      cutouts: [
        roundHole('pivot', 'Pivot hole', '4.1', '7'),
        cutout('slot', 'Peg slot', { kind: 'slot', length: '18', width: 'pegHole', turn: '0' }, '18', {
          along: { from: 'end', basis: 'outside', distance: '18' },
        }),
      ],
    }),
  ],
};

export const exampleJob: Job = {
  format: 'bendwright job',
  version: 1,
  name: 'Roof-vent peg stay',
  units: { plain: 'mm', show: 'mm', denominator: 64 },
  scale: '4',
  step: { length: '0.5', angle: '5' },
  sizes: [
    { id: 'pitch', name: 'pitch', text: '15', note: 'from peg to peg' },
    { id: 'peg-hole', name: 'pegHole', text: '3.2', note: 'a 3 mm peg with 0.2 of room' },
    { id: 'rivet-hole', name: 'rivetHole', text: '3.1', note: 'a 3 mm rivet with 0.1 of room' },
    { id: 'foot-to-peg', name: 'footToPeg', text: '37.565', note: 'foot hole to peg hole 1 of the bent strap' },
    { id: 'plate-length', name: 'plateLength', text: '190', note: '' },
    { id: 'plate-height', name: 'plateHeight', text: '60', note: '' },
  ],
  stocks,
  parts: [backPlate, frontStrap, wallBracket, lever],
  dxf: { unit: 'mm', bendLines: 'layer', layers: { outline: 'OUTLINE', cutouts: 'CUTOUTS', bends: 'BENDS' } },
};
