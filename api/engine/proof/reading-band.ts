/** How far a reading may be from what is expected before we say so, Ω and as a share. Ours: no standard names one. */
export const BAND_OHM = 0.05;
export const BAND_RATIO = 0.05;
/** Sums of decimal figures differ in their last binary digits. */
const ROUNDING_OHM = 1e-9;

/** What a tester is expected to show: one figure, or anything from one to another. */
export interface ExpectedBand {
  readonly fromOhm: number;
  readonly toOhm: number;
  /** How far outside still counts as fitting. */
  readonly bandOhm: number;
}

/** Half the width of what counts as fitting about an expected figure: the greater of 0.05 Ω and 5 %. */
export const bandOf = (expectedOhm: number): number => Math.max(BAND_OHM, expectedOhm * BAND_RATIO);

/** The band about what is expected from one figure to another; the wider end sets its width. */
export const bandAbout = (fromOhm: number, toOhm = fromOhm): ExpectedBand => ({
  fromOhm,
  toOhm,
  bandOhm: bandOf(Math.max(fromOhm, toOhm)),
});

/** How far a reading is from what is expected, Ω: nought between the two figures, below nought under them. */
export const offBy = ({ fromOhm, toOhm }: ExpectedBand, measuredOhm: number): number =>
  measuredOhm - Math.max(fromOhm, Math.min(measuredOhm, toOhm));

/** Whether a reading fits what is expected; just on the band's edge it does. */
export const fitsBand = (band: ExpectedBand, measuredOhm: number): boolean =>
  Math.abs(offBy(band, measuredOhm)) <= band.bandOhm + ROUNDING_OHM;
