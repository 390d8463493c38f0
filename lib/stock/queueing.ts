/** Queues in the long run: guests by chance, build times by chance, several assemblers (M/M/c). */

export interface LongRun {
  /** Chance that a new order waits at all (Erlang C). */
  readonly chanceToWait: number
  /** Chance that nobody is there. */
  readonly empty: number
  /** Mean number waiting, and waiting or being made. */
  readonly waiting: number
  readonly there: number
  /** Mean time until started, and until made, in the unit of time of the rates. */
  readonly untilStarted: number
  readonly untilMade: number
}

/**
 * Orders come at `arrivals` a unit of time, one assembler makes `builds` a unit, `assemblers` work.
 * Null where more come than can be made: the queue grows without end.
 */
export const longRun = (arrivals: number, builds: number, assemblers: number): LongRun | null => {
  const load = arrivals / builds
  if (!(load >= 0) || assemblers < 1 || load >= assemblers) return null
  let term = 1
  let sum = 1
  for (let k = 1; k < assemblers; k += 1) {
    term *= load / k
    sum += term
  }
  const all = ((term * load) / assemblers) * (assemblers / (assemblers - load))
  const empty = 1 / (sum + all)
  const chanceToWait = all * empty
  const waiting = (chanceToWait * load) / (assemblers - load)
  const untilStarted = arrivals > 0 ? waiting / arrivals : 0
  return {
    chanceToWait,
    empty,
    waiting,
    there: waiting + load,
    untilStarted,
    untilMade: untilStarted + 1 / builds,
  }
}
