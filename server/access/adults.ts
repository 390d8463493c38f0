/** The adults of the house: each with a name and a passphrase, compared one at a time. */
import { randomBytes } from 'node:crypto'
import type { AccessRefusal, NewAdult } from '#lib/access/http.ts'
import { nameKept, nameKey, passphraseForm, passphraseProblem } from '#lib/access/passphrase.ts'
import { MOST_ADULTS } from '#lib/access/tries.ts'
import type { Adult, AdultRole, House } from '#server/access/house.ts'
import { createInTurn } from '#server/access/in-turn.ts'
import {
  COST,
  type Cost,
  hashPassphrase,
  isPassphrase,
  type KeptPassphrase,
} from '#server/access/scrypt.ts'
import type { From, Tries } from '#server/access/tries.ts'

/** What came of a passphrase: whose it is, or why not. */
export type Tried =
  | { readonly code: 'right'; readonly adult: Adult }
  | { readonly code: 'wrong-passphrase' | 'no-passphrase' }
  | { readonly code: 'too-many-tries'; readonly again: number }

/** What came of a new passphrase. */
export type Told =
  | { readonly code: AccessRefusal | 'done' }
  | { readonly code: 'too-many-tries'; readonly again: number }

export interface Adults {
  /** Whether anybody could prove to be in charge. */
  hasInCharge(): boolean
  /** Tries a passphrase against everybody in charge. Only for a device that was proved. */
  proveInCharge(passphrase: string, from: From): Promise<Tried>
  /** Tries a passphrase against everybody who leads or is in charge. Only for a device that was proved. */
  proveAny(passphrase: string, from: From): Promise<Tried>
  /** Tries a name and a passphrase; how long it takes doesn't tell whether there is such a name. */
  prove(name: string, passphrase: string, from: From): Promise<Tried>
  /**
   * Adults to be kept, or why one won't do: of one another too.
   * @param mayRename who is in charge already, by this passphrase, goes by the new name from now on:
   * the one of before there were names
   */
  ready(
    wanted: readonly (NewAdult & { readonly role: AdultRole })[],
    mayRename?: boolean,
  ): Promise<
    | { readonly adults: readonly Adult[]; readonly renamed: readonly string[] }
    | { readonly code: AccessRefusal }
  >
  /**
   * Keeps one more, or tells why not; of two at once the second is compared with the first. That it
   * is compared counts as a try, whatever comes of it: it tells whether it is another's.
   */
  add(wanted: NewAdult & { readonly role: AdultRole }, from: From): Promise<Told>
  /**
   * Compares a new passphrase of an adult as `add` does, and has it kept.
   * @param keep keeps it at once; false where that can't be any more
   */
  change(
    adult: Adult,
    passphrase: string,
    from: From,
    keep: (kept: KeptPassphrase) => boolean,
  ): Promise<Told>
}

const isCheaper = (kept: KeptPassphrase, cost: Cost): boolean =>
  kept.n * kept.r * kept.p < cost.n * cost.r * cost.p

/** How long it is until a place in the queue is free, in seconds. */
const SOON_S = 5

/**
 * @param deps.isIn whether a device is let in still: comparing takes a while, longer behind others
 * @param deps.cost of new hashes; an older, cheaper one is made anew when it is next proved
 */
export const createAdults = ({
  house,
  tries,
  isIn,
  cost = COST,
}: {
  readonly house: House
  readonly tries: Tries
  readonly isIn: (device: string) => boolean
  readonly cost?: Cost
}): Adults => {
  const turns = createInTurn()
  // Compared with where there is no such name.
  const nobody = hashPassphrase(randomBytes(16).toString('hex'), cost)

  /** All are compared, so that the time taken tells nothing of which one it was. */
  const matching = async (
    passphrase: string,
    among: readonly Adult[],
  ): Promise<Adult | undefined> => {
    const form = passphraseForm(passphrase)
    let found: Adult | undefined
    for (const adult of among) if (await isPassphrase(form, adult)) found ??= adult
    return found
  }

  /** Comparing takes a while: who it was may be another's, or nobody's, by then. */
  const isStill = ({ id, hash }: Adult): boolean =>
    house.adults().some((one) => one.id === id && Buffer.from(hash).equals(one.hash))
  const isOut = ({ device }: From): boolean => device !== null && !isIn(device)

  const attempt = async (
    passphrase: string,
    from: From,
    amongNow: () => readonly Adult[],
  ): Promise<Tried> => {
    const tried = turns.do(from.device !== null, async (): Promise<Tried> => {
      const again = await tries.take(from)
      if (again !== null) return { code: 'too-many-tries', again }
      const among = amongNow()
      if (among.length === 0) await isPassphrase(passphraseForm(passphrase), await nobody)
      const adult = await matching(passphrase, among)
      if (!adult) {
        tries.wrong(from)
        return { code: 'wrong-passphrase' }
      }
      await tries.giveBack(from)
      if (isOut(from) || !isStill(adult)) return { code: 'wrong-passphrase' }
      if (!isCheaper(adult, cost)) return { code: 'right', adult }
      const kept = await hashPassphrase(passphraseForm(passphrase), cost)
      if (!house.rehash(adult, kept) || isOut(from)) return { code: 'wrong-passphrase' }
      return { code: 'right', adult: { ...adult, ...kept } }
    })
    if (tried !== null) return tried
    tries.refused()
    return { code: 'too-many-tries', again: SOON_S }
  }

  /** One new passphrase at a time, each counted before it is compared. */
  const oneByOne = (from: From, act: () => Promise<AccessRefusal | 'done'>): Promise<Told> => {
    const turn = adding.then(async (): Promise<Told> => {
      const again = await tries.take(from)
      return again === null ? { code: await act() } : { code: 'too-many-tries', again }
    })
    adding = turn.catch(() => undefined)
    return turn
  }
  let adding: Promise<unknown> = Promise.resolve()

  const inCharge = (): readonly Adult[] => house.adults().filter(({ role }) => role === 'in-charge')

  const adults: Adults = {
    hasInCharge: () => inCharge().length > 0,
    proveInCharge: async (passphrase, from) => {
      return inCharge().length === 0
        ? { code: 'no-passphrase' }
        : attempt(passphrase, from, inCharge)
    },
    proveAny: (passphrase, from) => attempt(passphrase, from, house.adults),
    prove: (name, passphrase, from) => {
      const key = nameKey(name)
      return attempt(passphrase, from, () => house.adults().filter((adult) => adult.key === key))
    },
    ready: async (wanted, mayRename = false) => {
      const known = house.adults()
      if (known.length + wanted.length > MOST_ADULTS) return { code: 'too-many' }
      const adults: Adult[] = []
      const renamed: string[] = []
      for (const { name: typed, passphrase, role } of wanted) {
        const name = nameKept(typed)
        if (name === null) return { code: 'no-name' }
        const problem = passphraseProblem(passphrase)
        if (problem !== null) return { code: problem }
        const key = nameKey(name)
        const all = [...known, ...adults]
        if (all.some((adult) => adult.key === key)) return { code: 'name-taken' }
        if (nameKey(passphrase) === key) return { code: 'too-common' }
        // Whose acceptance it was is told by the passphrase.
        const same = await matching(passphrase, all)
        if (same && mayRename && role === same.role && known.includes(same)) renamed.push(same.id)
        else if (same) return { code: 'same-passphrase' }
        const kept = await hashPassphrase(passphraseForm(passphrase), cost)
        adults.push({ id: `a-${randomBytes(6).toString('hex')}`, name, key, role, ...kept })
      }
      return { adults, renamed }
    },
    add: (wanted, from) =>
      oneByOne(from, async () => {
        const ready = await adults.ready([wanted])
        if ('code' in ready) return ready.code
        if (isOut(from)) return 'not-it'
        for (const adult of ready.adults) house.addAdult(adult)
        return 'done'
      }),
    change: async (adult, passphrase, from, keep) => {
      const problem = passphraseProblem(passphrase)
      if (problem !== null) return { code: problem }
      if (nameKey(passphrase) === adult.key) return { code: 'too-common' }
      return oneByOne(from, async () => {
        if (await matching(passphrase, house.adults())) return 'same-passphrase'
        const kept = await hashPassphrase(passphraseForm(passphrase), cost)
        return !isOut(from) && keep(kept) ? 'done' : 'not-it'
      })
    },
  }
  return adults
}
