/**
 * Rules of thumb of the trade for jam and jelly: common practice, without a publication. Shown as such, never as a process.
 *
 * Minutes, inches, degrees, hours and years as named; the gel temperature holds close to sea level.
 */
export const JELLY_PRACTICE = {
  jarBoilMinutes: 10,
  waterAboveJarsInches: 1,
  headspaceInches: 0.25,
  gelPointMinutes: { low: 20, high: 60 },
  gelPointFahrenheit: 220,
  gelPointCelsius: 104,
  finalSetHours: { low: 24, high: 48 },
  shelfLifeYears: 1,
  /** Jars sterilised for each jar expected to be filled. */
  sterileJarsPerJarExpected: 6 / 5,
  /** The part of the juice and water that is left at the gel point. */
  volumeLeftAtGelPoint: 0.5,
} as const
