/** One after the other, those of proved devices first: a comparison takes memory and a tenth of a second. */
import { MOST_PROVED_WAITING, MOST_STRANGERS_WAITING } from '#lib/access/tries.ts'

export interface InTurn {
  /** Null where too many wait already. */
  do<Result>(isProved: boolean, act: () => Promise<Result>): Promise<Result> | null
}

export const createInTurn = (): InTurn => {
  const proved: (() => Promise<void>)[] = []
  const strangers: (() => Promise<void>)[] = []
  let running = false
  const run = async (): Promise<void> => {
    running = true
    for (let next = take(); next; next = take()) await next()
    running = false
  }
  const take = () => proved.shift() ?? strangers.shift()
  return {
    do: (isProved, act) => {
      const waiting = isProved ? proved : strangers
      if (waiting.length >= (isProved ? MOST_PROVED_WAITING : MOST_STRANGERS_WAITING)) return null
      return new Promise((settle, fail) => {
        waiting.push(() => act().then(settle, fail))
        if (!running) void run()
      })
    },
  }
}
