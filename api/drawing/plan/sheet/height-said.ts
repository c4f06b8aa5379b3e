/** A height as sheets have it: whole millimetres above the floor, with a minus sign below it. */
export const heightSaid = (heightMm: number): string => {
  const whole = Math.round(heightMm);
  return whole < 0 ? `−${-whole}` : String(whole === 0 ? 0 : whole);
};
