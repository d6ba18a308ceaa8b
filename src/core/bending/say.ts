/** How figures stand in a sentence: seven figures at most, no trailing noughts, so that 1.6 reads as 1.6. */
const plain = (value: number): string => String(Number(value.toPrecision(7)));

/** A length in mm as it stands in a sentence. */
export const sayMm = (length: number): string => `${plain(length)} mm`;

/** An angle in rad as it stands in a sentence, in degrees. The largest numbers would overflow in degrees: those are held back. */
export const sayDegrees = (angle: number): string => {
  const degrees = (angle * 180) / Math.PI;
  return `${plain(Math.max(-Number.MAX_VALUE, Math.min(Number.MAX_VALUE, degrees)))}°`;
};

/** A bare figure as it stands in a sentence. */
export const sayFigure = (value: number): string => plain(value);
