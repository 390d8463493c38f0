/**
 * Ends of food against the model code's paragraphs. Source: FDA Food Code 2022; 3-501.14, .16, .17
 * and .19 as adopted states print them, 3-401.11 as FDA's and a state's handler manual; 3-306.14,
 * 3-501.18 and 3-701.11 from memory. What no paragraph says is a rule of this house and marked so.
 * Nothing here asks the program what is lawful.
 */
import { describe, expect, it } from 'vitest'
import { type EndOf, endsOf, type FoodHistory } from '#lib/safety/ends.ts'

type EndName = 'cold' | 'dry' | 'cool' | 'freeze' | 'crew' | 'throw-out'

const AXES = {
  made: ['no', 'made', 'handed-over'],
  ready: ['yes', 'making', 'not-cooked'],
  heldBy: ['hot', 'cold', 'time', 'dry', 'cooling', null],
  from: ['cooked', 'room'],
  clock: ['never', 'running', 'over'],
  read: ['in-limits', 'out', 'unread'],
  coolingMissed: [false, true],
  reheated: [false, true],
  date: ['none', 'ahead', 'past'],
} as const satisfies { readonly [Key in keyof FoodHistory]: readonly FoodHistory[Key][] }

const combined = (axes: readonly (readonly [string, readonly unknown[]])[]): readonly object[] => {
  const [first, ...rest] = axes
  if (!first) return [{}]
  return combined(rest).flatMap((one) => first[1].map((value) => ({ ...one, [first[0]]: value })))
}

const HISTORIES = combined(Object.entries(AXES)) as readonly FoodHistory[]

interface Law {
  /** null: a rule of this house, no paragraph says it. */
  readonly paragraph: string | null
  readonly says: string
  readonly forbids: (food: FoodHistory, end: EndName, crewMeal: boolean) => boolean
}

/** Food that is controlled for safety: what is dry is shelf-stable, 1-201.10. */
const isControlled = (food: FoodHistory) => food.heldBy !== 'dry'
const isKept = (end: EndName) =>
  end === 'cold' || end === 'dry' || end === 'cool' || end === 'freeze'
const isEaten = (end: EndName) => isKept(end) || end === 'crew'

const LAWS: readonly Law[] = [
  {
    paragraph: '3-306.14(A)',
    says: 'what was served and in a consumer’s possession isn’t offered as food again',
    forbids: (food, end) => food.made === 'handed-over' && isEaten(end),
  },
  {
    paragraph: '3-401.11',
    says: 'raw animal food is cooked to its temperature and time before it is eaten',
    forbids: (food, end) => food.ready === 'not-cooked' && isEaten(end),
  },
  {
    paragraph: '3-701.11(A)',
    says: 'food that is unsafe is discarded; held out of 3-501.16’s limits it is',
    forbids: (food, end) => food.read === 'out' && isEaten(end),
  },
  {
    paragraph: '3-501.14(A)',
    says: 'cooked food is cooled to 70 °F in 2 hours and 41 °F in 6: missed, it isn’t eaten; warm or hot, it is cooled so before it is kept cold or frozen',
    forbids: (food, end) =>
      food.from === 'cooked' &&
      ((food.coolingMissed && isEaten(end)) ||
        (isControlled(food) && food.heldBy !== 'cold' && (end === 'cold' || end === 'freeze'))),
  },
  {
    paragraph: '3-501.14(B)',
    says: 'food from ingredients at room temperature is cooled to 41 °F in 4 hours; as (A)',
    forbids: (food, end) =>
      food.from === 'room' &&
      ((food.coolingMissed && isEaten(end)) ||
        (isControlled(food) && food.heldBy !== 'cold' && (end === 'cold' || end === 'freeze'))),
  },
  {
    paragraph: '3-501.16(A)',
    says: 'food that is controlled is held hot or cold, so not on a dry shelf',
    forbids: (food, end) => isControlled(food) && end === 'dry',
  },
  {
    paragraph: '3-501.17(A)',
    says: 'what is kept cold over 24 hours bears the day by which it is eaten, counted from day 1',
    forbids: (food, end) =>
      isControlled(food) &&
      food.date === 'none' &&
      (end === 'cold' || end === 'cool' || end === 'freeze'),
  },
  {
    paragraph: '3-501.18(A)',
    says: 'food past that day, frozen time left out, is discarded',
    forbids: (food, end) => food.date === 'past' && isEaten(end),
  },
  {
    paragraph: '3-501.19(B)',
    says: 'food on time alone is eaten or discarded within its hours, and never returned to heat or cold',
    forbids: (food, end) =>
      (food.clock === 'over' && isEaten(end)) ||
      ((food.clock !== 'never' || food.heldBy === 'time') && isKept(end)),
  },
  {
    paragraph: null,
    says: 'of what nobody knows how it was kept, nothing is eaten',
    forbids: (food, end) => food.heldBy === null && isEaten(end),
  },
  {
    paragraph: null,
    says: 'a missing reading never passes',
    forbids: (food, end) => food.read === 'unread' && isEaten(end),
  },
  {
    paragraph: null,
    says: 'a batch is finished before anything is done with it',
    forbids: (food, end) => food.ready === 'making' && isEaten(end),
  },
  {
    paragraph: null,
    says: 'made for a guest, it is nobody else’s tomorrow',
    forbids: (food, end) => food.made !== 'no' && isKept(end),
  },
  {
    paragraph: null,
    says: 'cooled and reheated once',
    forbids: (food, end) => food.reheated && end === 'cool',
  },
  {
    paragraph: null,
    says: 'only what is warm is cooled, and dry food stays dry',
    forbids: (food, end) =>
      (end === 'cool' && (food.heldBy === 'cold' || food.heldBy === 'dry')) ||
      (end === 'cold' && food.heldBy === 'dry'),
  },
  {
    paragraph: null,
    says: 'the crew eats only where the house says so',
    forbids: (_, end, crewMeal) => end === 'crew' && !crewMeal,
  },
]

interface Row extends EndOf {
  readonly food: FoodHistory
  readonly crewMeal: boolean
  /** What forbids it. */
  readonly laws: readonly Law[]
}

const TABLE: readonly Row[] = HISTORIES.flatMap((food) =>
  [false, true].flatMap((crewMeal) =>
    endsOf(food, crewMeal).map((one) => ({
      ...one,
      food,
      crewMeal,
      laws: LAWS.filter((law) => law.forbids(food, one.end, crewMeal)),
    })),
  ),
)

const said = ({ food, end, crewMeal }: Row) => JSON.stringify({ end, crewMeal, ...food })

describe('every history × every end, against the paragraphs', () => {
  it('[EN1] an end is offered exactly where no paragraph and no rule of the house forbids it', () => {
    expect(TABLE).toHaveLength(3 * 3 * 6 * 2 * 3 * 3 * 2 * 2 * 3 * 2 * 6)
    const wrong = TABLE.filter((row) => row.offered !== (row.laws.length === 0))
    expect(wrong.slice(0, 3).map(said)).toEqual([])
    expect(wrong).toHaveLength(0)
  })

  it('[EN1] an end that isn’t there names a paragraph that forbids it, none where only the house does', () => {
    const wrong = TABLE.filter(
      (row) => !row.offered && !row.laws.some((law) => law.paragraph === row.paragraph),
    )
    expect(wrong.slice(0, 3).map(said)).toEqual([])
    expect(wrong).toHaveLength(0)
  })

  it('[EN1] the table says yes and no to each end but throwing out, which is always there', () => {
    const count = (end: EndName, offered: boolean) =>
      TABLE.filter((row) => row.end === end && row.offered === offered).length
    for (const end of ['cold', 'dry', 'cool', 'freeze', 'crew'] as const) {
      expect(count(end, true), end).toBeGreaterThan(0)
      expect(count(end, false), end).toBeGreaterThan(0)
    }
    expect(count('throw-out', false)).toBe(0)
  })

  it('[EN1] each law forbids something alone, so that a table without it would be another', () => {
    const alone = LAWS.map((law) =>
      TABLE.some((row) => {
        const [only, ...more] = row.laws
        return only === law && more.length === 0
      }),
    )
    expect(LAWS.filter((_, index) => !alone[index]).map(({ says }) => says)).toEqual([])
  })
})

const GOOD: FoodHistory = {
  made: 'no',
  ready: 'yes',
  heldBy: 'cold',
  from: 'cooked',
  clock: 'never',
  read: 'in-limits',
  coolingMissed: false,
  reheated: false,
  date: 'ahead',
}

const offered = (food: Partial<FoodHistory>, crewMeal = true) =>
  endsOf({ ...GOOD, ...food }, crewMeal).flatMap((one) => (one.offered ? [one.end] : []))

const whyNot = (end: EndName, food: Partial<FoodHistory>, crewMeal = true) => {
  const found = endsOf({ ...GOOD, ...food }, crewMeal).find((one) => one.end === end)
  return [found?.why, found?.paragraph]
}

describe('ends by their paragraph', () => {
  it('[EN2] what was on time alone is never set aside; the crew may eat it while its time runs', () => {
    expect(offered({ heldBy: 'time', clock: 'running' })).toEqual(['crew', 'throw-out'])
    expect(offered({ heldBy: 'time', clock: 'over' })).toEqual(['throw-out'])
    expect(whyNot('cold', { heldBy: 'cold', clock: 'running' })).toEqual([
      'on-clock',
      '3-501.19(B)',
    ])
  })

  it('[EN3] made food is never set aside, and what a guest had in hand is nobody’s', () => {
    expect(offered({ made: 'made' })).toEqual(['crew', 'throw-out'])
    expect(whyNot('cold', { made: 'made' })).toEqual(['made', null])
    expect(offered({ made: 'handed-over' })).toEqual(['throw-out'])
    expect(whyNot('crew', { made: 'handed-over' })).toEqual(['handed-over', '3-306.14(A)'])
  })

  it('[EN4] out of limits, unread, unknown, not cooked, not cooled, past its date: thrown out', () => {
    const lost: readonly Partial<FoodHistory>[] = [
      { read: 'out' },
      { read: 'unread' },
      { heldBy: null },
      { ready: 'not-cooked' },
      { ready: 'making' },
      { coolingMissed: true },
      { date: 'past' },
    ]
    for (const food of lost) expect(offered(food), JSON.stringify(food)).toEqual(['throw-out'])
  })

  it('[EN5] cold food goes on to its date mark; without a known first day it doesn’t', () => {
    expect(offered({})).toEqual(['cold', 'freeze', 'crew', 'throw-out'])
    expect(offered({ date: 'none' })).toEqual(['crew', 'throw-out'])
    expect(whyNot('cold', { date: 'none' })).toEqual(['no-date', '3-501.17(A)'])
    expect(offered({ heldBy: 'dry', date: 'none' })).toEqual(['dry', 'freeze', 'crew', 'throw-out'])
  })

  it('[EN6] hot food is cooled first; once cooled and reheated it isn’t again, by a house rule', () => {
    expect(offered({ heldBy: 'hot' })).toEqual(['cool', 'crew', 'throw-out'])
    expect(offered({ heldBy: 'cooling', from: 'room' })).toEqual(['cool', 'crew', 'throw-out'])
    expect(whyNot('cold', { heldBy: 'hot' })).toEqual(['not-cold-yet', '3-501.14(A)'])
    expect(whyNot('cool', { heldBy: 'hot', reheated: true })).toEqual(['cooled-once', null])
  })

  it('[EN8] the crew eats only where the house’s setting allows it', () => {
    expect(offered({}, false)).toEqual(['cold', 'freeze', 'throw-out'])
    expect(whyNot('crew', {}, false)).toEqual(['crew-not-allowed', null])
  })
})
