/** Who proves to be the person in charge: by a passphrase, with a limit to wrong tries. */
import { RateLimiterMemory } from 'rate-limiter-flexible'
import type { KeptPassphrase, Passphrases } from '#server/in-charge/port.ts'
import { COST, type Cost, hashPassphrase, isPassphrase } from '#server/in-charge/scrypt.ts'

/** Characters after NFKC normalisation (NIST SP 800-63B: at least 8, spaces and all of Unicode). */
const FEWEST_CHARACTERS = 8
const MOST_CHARACTERS = 200

/** Wrong tries a minute from one address. */
const MOST_WRONG_TRIES = 5

type Tried = 'right' | 'wrong-passphrase' | 'no-passphrase' | 'too-many-tries'

export interface InCharge {
  isSet(): Promise<boolean>
  /** @param from the address that asks, whose wrong tries are counted */
  prove(passphrase: string, from: string): Promise<Tried>
  /** Sets the first one. */
  setFirst(passphrase: string): Promise<'set' | 'set-already' | 'too-short' | 'too-long'>
  /** Sets another, for whoever knows the one before. A new one that won't do is no try. */
  change(
    passphrase: string,
    before: string,
    from: string,
  ): Promise<'set' | 'too-short' | 'too-long' | Exclude<Tried, 'right'>>
}

/** The one form in which keyboards and systems that compose letters differently agree. */
const formOf = (passphrase: string): string => passphrase.normalize('NFKC')

const lengthProblem = (passphrase: string): 'too-short' | 'too-long' | null => {
  const { length } = [...formOf(passphrase)]
  if (length < FEWEST_CHARACTERS) return 'too-short'
  return length > MOST_CHARACTERS ? 'too-long' : null
}

const isCheaper = (kept: KeptPassphrase, cost: Cost): boolean =>
  kept.n * kept.r * kept.p < cost.n * cost.r * cost.p

/** @param deps.cost of new hashes; an older, cheaper one is made anew when it is next proved */
export const createInCharge = ({
  passphrases,
  cost = COST,
}: {
  readonly passphrases: Passphrases
  readonly cost?: Cost
}): InCharge => {
  const wrongTries = new RateLimiterMemory({ points: MOST_WRONG_TRIES, duration: 60 })
  let turn: Promise<unknown> = Promise.resolve()

  /** One at a time, so that tries made at once are counted one by one and share no memory. */
  const inTurn = <Result>(act: () => Promise<Result>): Promise<Result> => {
    const result = turn.then(act)
    turn = result.catch(() => undefined)
    return result
  }

  const make = (passphrase: string): Promise<KeptPassphrase> =>
    hashPassphrase(formOf(passphrase), cost)

  const attempt = async (
    passphrase: string,
    from: string,
  ): Promise<{ readonly tried: Tried; readonly kept: KeptPassphrase | null }> => {
    const kept = await passphrases.kept()
    if (kept === null) return { tried: 'no-passphrase', kept }
    const before = await wrongTries.get(from)
    if (before !== null && before.consumedPoints >= MOST_WRONG_TRIES)
      return { tried: 'too-many-tries', kept }
    const isRight =
      lengthProblem(passphrase) === null && (await isPassphrase(formOf(passphrase), kept))
    if (!isRight) await wrongTries.penalty(from)
    return { tried: isRight ? 'right' : 'wrong-passphrase', kept }
  }

  return {
    isSet: async () => (await passphrases.kept()) !== null,
    prove: (passphrase, from) =>
      inTurn(async () => {
        const { tried, kept } = await attempt(passphrase, from)
        if (tried === 'right' && kept !== null && isCheaper(kept, cost))
          await passphrases.replace(kept, await make(passphrase))
        return tried
      }),
    setFirst: (passphrase) =>
      inTurn(async () => {
        if ((await passphrases.kept()) !== null) return 'set-already'
        const problem = lengthProblem(passphrase)
        if (problem !== null) return problem
        return (await passphrases.replace(null, await make(passphrase))) ? 'set' : 'set-already'
      }),
    change: (passphrase, before, from) =>
      inTurn(async () => {
        const problem = lengthProblem(passphrase)
        if (problem !== null) return problem
        const { tried, kept } = await attempt(before, from)
        if (tried !== 'right') return tried
        return (await passphrases.replace(kept, await make(passphrase)))
          ? 'set'
          : 'wrong-passphrase'
      }),
  }
}
