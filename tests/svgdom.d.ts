/** svgdom brings no types of its own; this is the part that the tests ask. */
declare module 'svgdom' {
  export function createSVGWindow(): Window & typeof globalThis;
}
