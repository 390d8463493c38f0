/** Codes and passphrases guessed for a day, by the program's own limits on a told clock. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { CODE_LENGTH, CODE_LETTERS } from '#lib/access/code.ts'
import { MOST_CODES } from '#lib/access/tries.ts'
import { type Access, createAccess } from '#server/access/access.ts'
import { closeDurableDatabase } from '#server/store/durable-database.ts'
import { openHouseDatabase } from '#server/store/house-database.ts'
import { createFindings, type Proof } from '#tests/prove/proof.ts'
import { CHEAP } from '#tests/support/cheap-hash.ts'

const ADDRESSES = 50
const TABLETS = 40
const MOST_CHANCE = 0.001
const MINUTE_MS = 60_000
const DAY_MINUTES = 1_440

/** Two words out of 2,048 that somebody chose: 22 bits, of which the guessers know the list. */
const PASSPHRASES = 2_048 ** 2

/** Each is known to be one of these, and is tried for all in charge at once by a proved device. */
const IN_CHARGE = [
  { name: 'Adult in charge', passphrase: 'lantern pond' },
  { name: 'Another in charge', passphrase: 'harbor violin' },
] as const
const LEAD = { name: 'Lead of the house', passphrase: 'meadow copper' }

interface Caller {
  readonly headers: Readonly<Record<string, string>>
  readonly socket: { readonly remoteAddress: string }
}

const callerOf = (remoteAddress: string, token?: string): Caller => ({
  headers: token === undefined ? {} : { authorization: `Bearer ${token}` },
  socket: { remoteAddress },
})

interface House {
  readonly access: Access
  readonly lead: Caller
  /** The told clock goes on. */
  pass(ms: number): void
  now(): number
  end(): void
}

/** A house with its adults, whose clock is told: limits count by it as well. */
const openHouse = async (): Promise<House> => {
  const folder = mkdtempSync(join(tmpdir(), 'level-scoop-'))
  const database = openHouseDatabase({ path: join(folder, 'house.db') })
  const real = Date.now
  let told = Date.UTC(2026, 10, 30, 6)
  Date.now = () => told
  const access = createAccess({
    database,
    now: () => told,
    monotonic: () => told,
    here: () => ({
      page: 'own',
      demoIsOpen: false,
      line: null,
      station: 'alder-hall',
      stations: [],
      isDemo: false,
    }),
    cost: CHEAP,
  })
  const here = callerOf('127.0.0.1')
  const [first, ...others] = IN_CHARGE
  const secret = access.secret() ?? ''
  const made = await access.make(here, { secret, lead: LEAD, inCharge: first })
  if (made.code !== 'done') throw new Error(made.code)
  const lead = callerOf('127.0.0.1', made.token)
  for (const adult of others) {
    const wanted = { ...adult, role: 'in-charge', proof: first.passphrase } as const
    const added = await access.addAdult(lead, wanted)
    if (added.code !== 'done') throw new Error(added.code)
  }
  return {
    access,
    lead,
    pass: (ms) => {
      told += ms
    },
    now: () => told,
    end: () => {
      Date.now = real
      access.close()
      closeDurableDatabase(database)
      rmSync(folder, { recursive: true, force: true })
    },
  }
}

/** A tablet that joins with a code that the lead's screen shows. */
const joinTablet = async ({ access, lead }: House, address: string): Promise<Caller | null> => {
  const by = access.deviceOf(lead)
  const given = by ? access.code(by, { role: 'counter' }) : null
  if (given?.code !== 'done') return null
  const joined = await access.join(callerOf(address), { code: given.typed, name: address })
  return joined.code === 'done' ? callerOf(address, joined.token) : null
}

let drawn = 1

/** A next number below `most`, the same in every run. */
const draw = (most: number): number => {
  drawn = (drawn * 48_271) % 2_147_483_647
  return drawn % most
}

const guessedCode = (): string =>
  Array.from({ length: CODE_LENGTH }, () => CODE_LETTERS[draw(CODE_LETTERS.length)]).join('')

/** A new tablet joins, and somebody in charge proves it there: how many of the two. */
const honestNow = async (house: House, address: string): Promise<number> => {
  const joined = await joinTablet(house, address)
  if (joined === null) return 0
  const { passphrase } = IN_CHARGE[1]
  const { adults, from } = house.access
  const proved = await adults.proveInCharge(passphrase, from(joined))
  return proved.code === 'right' ? 2 : 1
}

interface Guessed {
  /** Tries that were compared with something, at each told moment. */
  readonly looked: readonly { readonly at: number; readonly chances: number }[]
  readonly refused: number
  readonly honest: number
  readonly honestIn: number
  readonly right: number
}

type Try = 'looked' | 'refused' | 'right'

const codeTried = async ({ access }: House, by: Caller): Promise<Try> => {
  const { code } = await access.join(by, { code: guessedCode(), name: 'a tablet' })
  if (code === 'done') return 'right'
  return code === 'too-many-tries' ? 'refused' : 'looked'
}

/** A stranger has to name whom it means; a proved device is compared with all in charge. */
const passphraseTried = async ({ access }: House, by: Caller, isProved: boolean): Promise<Try> => {
  const passphrase = `word${draw(2_048)} other${draw(2_048)}`
  const { code } = isProved
    ? await access.adults.proveInCharge(passphrase, access.from(by))
    : await access.signOn(by, { name: IN_CHARGE[0].name, passphrase })
  if (code === 'right' || code === 'done') return 'right'
  return code === 'too-many-tries' ? 'refused' : 'looked'
}

/** Everybody guesses whenever they may, every minute; once an hour an honest tablet joins. */
const guessFor = async (minutes: number, what: 'codes' | 'passphrases'): Promise<Guessed> => {
  const house = await openHouse()
  const tally = { refused: 0, honest: 0, honestIn: 0, right: 0 }
  const looked: { at: number; chances: number }[] = []
  try {
    const tablets: Caller[] = []
    for (let tablet = 1; tablet <= TABLETS; tablet += 1) {
      const joined = await joinTablet(house, `10.0.2.${tablet}`)
      if (joined === null) throw new Error('a tablet could not join')
      tablets.push(joined)
    }
    const strangers = Array.from({ length: ADDRESSES }, (_, place) =>
      callerOf(`10.0.1.${place + 1}`),
    )
    const sources = [...strangers, ...tablets]
    const guess = async (by: Caller): Promise<number> => {
      const isProved = tablets.includes(by)
      let chances = 0
      for (;;) {
        const tried =
          what === 'codes' ? await codeTried(house, by) : await passphraseTried(house, by, isProved)
        if (tried === 'refused') break
        if (tried === 'right') tally.right += 1
        const each = what === 'codes' ? MOST_CODES : isProved ? IN_CHARGE.length : 1
        chances += each
      }
      tally.refused += 1
      return chances
    }
    for (let minute = 0; minute < minutes; minute += 1) {
      let chances = 0
      // Their screens are open: a proof that isn't used runs out after a day.
      if (minute % 60 === 0) for (const by of [house.lead, ...tablets]) house.access.now(by)
      if (minute % 60 === 30) {
        // All at once, and an honest one among them.
        const [honestIn, ...got] = await Promise.all([
          honestNow(house, `10.0.3.${1 + (minute % 250)}`),
          ...sources.map(guess),
        ])
        tally.honest += 2
        tally.honestIn += honestIn
        chances = got.reduce((sum, one) => sum + one, 0)
      } else for (const by of sources) chances += await guess(by)
      looked.push({ at: house.now(), chances })
      house.pass(MINUTE_MS)
    }
    return { looked, ...tally }
  } finally {
    house.end()
  }
}

/** The most chances in any day of a longer time. */
const mostInADay = (looked: Guessed['looked']): number => {
  let most = 0
  for (const { at } of looked) {
    const until = at + DAY_MINUTES * MINUTE_MS
    const within = looked.filter((one) => one.at >= at && one.at < until)
    most = Math.max(
      most,
      within.reduce((sum, { chances }) => sum + chances, 0),
    )
  }
  return most
}

const percent = (chance: number): string => `${(chance * 100).toPrecision(2)} %`

/**
 * @param minutes how long is guessed; a day and a half shows that no day holds more than another
 */
export const proveGuessing = async (minutes: number): Promise<Proof> => {
  const { require, failures } = createFindings()
  const figures: string[] = []
  for (const [what, space] of [
    ['codes', CODE_LETTERS.length ** CODE_LENGTH],
    ['passphrases', PASSPHRASES],
  ] as const) {
    const guessed = await guessFor(minutes, what)
    const chances = mostInADay(guessed.looked)
    const chance = 1 - (1 - 1 / space) ** chances
    figures.push(
      `${what}: ${chances} comparisons in the worst day, out of ${space.toExponential(1)}: a chance of ${percent(chance)}; refused ${guessed.refused} times`,
      `${what}: ${guessed.honestIn} of ${guessed.honest} honest joins and proofs meanwhile`,
    )
    require(chances >= ADDRESSES + TABLETS, `${what}: hardly anybody guessed`)
    require(guessed.right === 0, `${what}: ${guessed.right} were guessed`)
    require(chance <= MOST_CHANCE, `${what}: the chance is ${percent(chance)}`)
    require(guessed.honest > 0 &&
      guessed.honestIn ===
        guessed.honest, `${what}: ${guessed.honest - guessed.honestIn} honest ones were kept out`)
  }
  return {
    title: `guessing: ${ADDRESSES} addresses and ${TABLETS} tablets for ${(minutes / 60).toFixed(0)} hours`,
    figures,
    failures,
  }
}
