/** Tints of the folded view: five flat tones for each metal, on light and on dark paper. Our own choice, matched by eye to the metal. */
import type { JobStock } from '../../job/schema';

export type Metal = JobStock['metal'];

/** Where a surface looks when the first leg lies on the bench. */
export interface Tones {
  /** Faces that look up. */
  readonly top: string;
  /** Faces that slope, and the inside of bends. */
  readonly slope: string;
  /** Faces that stand upright. */
  readonly upright: string;
  /** Cut edges and the walls of holes. */
  readonly edge: string;
  /** Faces that look down. */
  readonly under: string;
}

export interface FoldedColours {
  readonly tones: Tones;
  /** Faces and edges of what is chosen. */
  readonly chosenFace: string;
  readonly chosenEdge: string;
  readonly ink: string;
  /** Lines of a shape that is no longer the one typed. */
  readonly faded: string;
  readonly blue: string;
}

const tones = (top: string, slope: string, upright: string, edge: string, under: string): Tones => ({ top, slope, upright, edge, under });

const DAY: Record<Metal, Tones> = {
  brass: tones('#EBDAA6', '#F3E8C4', '#DCC88F', '#BFA565', '#B69C5C'),
  steel: tones('#D3D1CB', '#E4E2DD', '#C1BEB7', '#9B978E', '#928E85'),
  stainless: tones('#DDE0DF', '#ECEEED', '#CACECD', '#A5AAA9', '#9BA09F'),
  copper: tones('#E9BC9B', '#F3D5BF', '#D9A580', '#B77F5A', '#AC744F'),
  bronze: tones('#DDBE8E', '#EBD5AF', '#CBA974', '#A68352', '#9C7A4A'),
  'nickel silver': tones('#E3E0CF', '#F0EDE1', '#D1CDB8', '#AFAA90', '#A49F85'),
  aluminium: tones('#E4E5E6', '#F1F2F2', '#D1D3D5', '#ABAEB2', '#A1A4A8'),
  other: tones('#E0D8C8', '#EEE8DC', '#CEC4B0', '#ADA28C', '#A2977F'),
};

const DIM: Record<Metal, Tones> = {
  brass: tones('#8F7C46', '#A8935A', '#75653A', '#5C4E2A', '#4C4023'),
  steel: tones('#77746D', '#8E8A82', '#625F59', '#4B4843', '#3F3D38'),
  stainless: tones('#7F8382', '#969A99', '#686C6B', '#505352', '#434645'),
  copper: tones('#8F5F40', '#A97451', '#744C33', '#5A3A26', '#4B3020'),
  bronze: tones('#86683A', '#9F7F4C', '#6D542F', '#534022', '#45351C'),
  'nickel silver': tones('#827E69', '#9A967E', '#6A6756', '#514F41', '#444236'),
  aluminium: tones('#85878A', '#9C9EA1', '#6D6F72', '#545658', '#47494B'),
  other: tones('#7F7665', '#978D7A', '#686053', '#504A3F', '#433E35'),
};

/** @param dim whether the screen is set for a dim workshop. Blue, ink and ink2 are those of the sheet (see the visual guide). */
export const foldedColours = (metal: Metal, dim: boolean): FoldedColours =>
  dim
    ? { tones: DIM[metal], chosenFace: '#3D719F', chosenEdge: '#27496A', ink: '#F4ECDC', faded: '#C6BBA4', blue: '#93C9F8' }
    : { tones: DAY[metal], chosenFace: '#A8CDEC', chosenEdge: '#4B86BC', ink: '#1C1913', faded: '#50483A', blue: '#0B4A88' };

/** sin of the tilt within which a face counts as lying flat, or as standing upright. */
const LYING = Math.cos(Math.PI / 12);
const STANDING = Math.sin(Math.PI / 12);

/** The tone of a flat face whose normal rises by this much (z of the unit normal, from −1 to 1). */
export function faceTone(rise: number): keyof Tones {
  if (rise >= LYING) return 'top';
  if (rise > STANDING) return 'slope';
  return rise >= -STANDING ? 'upright' : 'under';
}
