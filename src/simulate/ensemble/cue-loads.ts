/**
 * A played cue list in one draw, a line per cue: the load on the pack as I = A/V + B, its peak, and the heat of one
 * drive at two winding temperatures. Filled anew for every draw.
 */
export interface CueLoads {
  count: number;
  totalS: number;
  durationsS: Float64Array;
  /** Mean A and B on the pack, everything included. */
  powersW: Float64Array;
  currentsA: Float64Array;
  /** A and B at the moment of the largest current. */
  peakPowersW: Float64Array;
  peakCurrentsA: Float64Array;
  /** Heat in the copper at the lower and the higher test temperature, and in the gears. */
  coolHeatsW: Float64Array;
  warmHeatsW: Float64Array;
  gearHeatsW: Float64Array;
}

export function emptyCueLoads(count: number): CueLoads {
  const numbers = () => new Float64Array(count);
  return {
    count,
    totalS: 0,
    durationsS: numbers(),
    powersW: numbers(),
    currentsA: numbers(),
    peakPowersW: numbers(),
    peakCurrentsA: numbers(),
    coolHeatsW: numbers(),
    warmHeatsW: numbers(),
    gearHeatsW: numbers(),
  };
}
