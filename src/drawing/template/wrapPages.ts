/**
 * A template that wraps round the finished bend, to mark holes after bending. It is the development of one face: legs at their
 * straight lengths, each bend at the length of its arc on that face. The paper's own thickness is neglected: 0.1 mm of it round
 * the outside of a right angle is 0.08 mm.
 */
import type { WalkableLayout } from '../../core/part/layOut';
import type { LegBend } from '../../core/part/layoutTypes';
import { unfold } from '../../core/part/unfold';
import type { Result } from '../../core/result';
import type { Page } from '../page';
import { pagesOf } from './templatePages';
import type { FaceWords } from './figure';
import type { Face, TemplateSettings, TemplateSubject } from './types';

/** Radius of a face in a bend: the marked face is inside a bend up and outside a bend down, the other face the other way about. */
export const faceRadius = (bend: LegBend, thickness: number, face: Face): number =>
  (bend.way === 'up') === (face === 'marked') ? bend.figures.radius : bend.figures.radius + thickness;

/** The layout with every bend as long as its arc on a face: turn × radius there. Unfolding it develops that face. */
export function faceLayout(layout: WalkableLayout, face: Face): WalkableLayout {
  const { thickness } = layout.part;
  return {
    ...layout,
    legs: layout.legs.map((leg) =>
      leg.bend ? { ...leg, bend: { ...leg.bend, figures: { ...leg.bend.figures, allowance: leg.bend.figures.turn * faceRadius(leg.bend, thickness, face) } } } : leg,
    ),
  };
}

const WRAP_FACE: FaceWords = ({ face }) => `wraps round the bent part, ${face} face`;

/** Pages like those of `templatePages`, for each subject the development of the face it names instead of the blank. */
export function wrapPages(subjects: readonly TemplateSubject[], settings: TemplateSettings): Result<readonly Page[]> {
  return pagesOf(subjects.map((subject) => ({ ...subject, blank: unfold(faceLayout(subject.layout, subject.face)) })), settings, WRAP_FACE);
}
