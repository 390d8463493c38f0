import { describe, expect, it } from 'vitest'
import { type JudgedTaken, judgeTaken } from '#lib/needs/judge.ts'
import { kitchenOf } from '#lib/rooms/care/facts/kitchen-of.ts'
import type { Circumstances, Decision } from '#lib/service/commands/decision.ts'
import { type BuildChoice, takenComponents } from '#lib/service/events/build-choice.ts'
import type { RunningState } from '#lib/service/state.ts'
import { findBuild } from '#lib/service/tickets.ts'
import { evolve } from '#lib/spine/evolve.ts'
import { askableAllergens } from '#lib/station/codes/askable.ts'
import { DIETS } from '#lib/station/codes/diets.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import {
  choose,
  codeOf,
  demoStation,
  eventsOf,
  needs,
  ready,
  running,
  send,
  when,
} from '#tests/support/service.ts'

const sound = running(ready())

/** Every item, whole or without each of its optional parts, in each base, for each need, both ways. */
const orders: readonly BuildChoice[] = demoStation.items.flatMap((item) => {
  const optional = item.parts.filter((part) => !part.required).map((part) => part.component)
  const out = Object.fromEntries(optional.map((id) => [id, 'no' as const]))
  const parts = [{}, out, ...optional.map((id) => ({ ...out, [id]: 'in' as const }))]
  return [...askableAllergens(demoStation), ...DIETS].flatMap((code) =>
    (['keep-apart', 'leave-out'] as const).flatMap((handling) =>
      (item.base?.choices ?? []).flatMap((base) =>
        parts.map((one) =>
          choose(item.id, one, { base, ...needs({ code, handling, reason: null }) }),
        ),
      ),
    ),
  )
})

interface Fault {
  readonly state: RunningState
  readonly over?: Partial<Circumstances>
  /** What of an order is otherwise. */
  readonly order?: (choice: BuildChoice) => object
  readonly readBack?: boolean
  /** Of these only those are to be blocked; all where it is missing. */
  readonly blocks?: (choice: BuildChoice) => boolean
}

const answer = (change: (answer: JudgedTaken) => unknown): Pick<Fault, 'state' | 'over'> => ({
  state: sound,
  over: {
    checker: (kitchen, taken, asked) => change(judgeTaken(kitchen, taken, asked)) as JudgedTaken,
  },
})

const document = (over: object): RunningState => ({
  ...sound,
  station: { ...demoStation, ...over } as StationDocument,
})

const takes = (choice: BuildChoice, ...ids: string[]): boolean =>
  takenComponents(choice).some((id) => ids.includes(id))

const isApart = (choice: BuildChoice): boolean =>
  choice.needs.some((one) => one.handling === 'keep-apart')

/** Whether the rules rule it out or ask for the person in charge, on this document. */
const isUnfit = (state: RunningState) => (choice: BuildChoice) => {
  const { level } = judgeTaken(kitchenOf(state), takenComponents(choice), choice.needs)
  return level !== 'ok' && level !== 'note'
}

const relabelled = (id: string, over: object): RunningState =>
  document({
    ingredients: demoStation.ingredients.map((one) => (one.id === id ? { ...one, ...over } : one)),
  })

const faults: Readonly<Record<string, Fault>> = {
  'the newest labels are missing': { state: sound, over: { newestLabels: null } },
  'the newest version is no number': { state: sound, over: { newestLabels: { pita: Number.NaN } } },
  'a label is stale': { state: sound, over: { newestLabels: { pita: 1 } } },
  'the checker throws': {
    state: sound,
    over: {
      checker: () => {
        throw new Error('a fault')
      },
    },
  },
  'the answer is missing': answer(() => undefined),
  'the answer is null': answer(() => null),
  'the answer is a word': answer(() => 'ok'),
  'the answer is empty': answer(() => ({})),
  'the level is missing': answer(({ level: _, ...rest }) => rest),
  'the level is none of the five': answer((one) => ({ ...one, level: 'fine' })),
  'the level is a name that every record inherits': answer((one) => ({
    ...one,
    level: 'constructor',
  })),
  'the findings are missing': answer(({ findings: _, ...rest }) => rest),
  'the findings are a word': answer((one) => ({ ...one, findings: 'none' })),
  'the findings hold nothing': answer((one) => ({ ...one, findings: [null] })),
  'the back-ups are missing': answer(({ fromBackup: _, ...rest }) => rest),
  'the level is at odds with the findings': answer((one) => ({
    ...one,
    level: one.level === 'ok' ? 'note' : 'ok',
  })),
  'a finding is of another component': answer((one) => ({
    level: 'note',
    fromBackup: [],
    findings: [
      { ...one.findings[0], component: 'kelp', need: 'milk', level: 'note', why: 'contact' },
    ],
  })),
  'the findings don’t say what each declares': {
    ...answer((one) => ({ ...one, findings: one.findings.map(({ states: _, ...rest }) => rest) })),
    blocks: (choice) =>
      judgeTaken(kitchenOf(sound), takenComponents(choice), choice.needs).findings.length > 0,
  },
  'the checker gives a promise': answer((one) => Promise.resolve(one)),
  'the components are missing': { state: document({ components: [] }) },
  'the components are null': { state: document({ components: null }) },
  'the ingredients are missing': { state: document({ ingredients: null }) },
  'the ingredients are none': { state: document({ ingredients: [] }), blocks: isApart },
  'the contacts are nobody’s word': { state: document({ contacts: null }), blocks: isApart },
  'the contacts are malformed': { state: document({ contacts: 'none' }) },
  'the back-ups of the station are missing': { state: document({ backups: undefined }) },
  'no back-up is ready': {
    state: { ...sound, backups: {} },
    blocks: isUnfit({ ...sound, backups: {} }),
  },
  'nobody has read a label': {
    state: document({
      ingredients: demoStation.ingredients.map((one) => ({ ...one, readOn: null })),
    }),
    blocks: isApart,
  },
  'a label declares nothing': {
    state: relabelled('black-beans', { declarations: {}, traits: null }),
    blocks: (choice) => takes(choice, 'beans'),
  },
  'a label has no declarations': {
    state: relabelled('black-beans', { declarations: null }),
    blocks: (choice) =>
      takes(choice, 'beans') && !DIETS.some((one) => one === choice.needs[0]?.code),
  },
  'a label declares nonsense': {
    state: relabelled('black-beans', {
      declarations: Object.fromEntries(
        askableAllergens(demoStation).map((code) => [code, 'surely-not']),
      ),
      traits: null,
    }),
    blocks: (choice) => takes(choice, 'beans'),
  },
  'an ingredient of a recipe is missing': {
    state: document({
      recipes: demoStation.recipes.map((one) => ({ ...one, ingredients: ['nobody-knows'] })),
    }),
    blocks: (choice) => takes(choice, 'tuna', 'slaw'),
  },
  'nobody is in charge': { state: { ...sound, inCharge: null }, blocks: isApart },
  'nothing was read back': { state: sound, readBack: false },
  'the guest did not agree': {
    state: sound,
    order: (choice) => ({ ...choice, agreed: false }),
    blocks: isApart,
  },
  'the answer of the guest is not sure': {
    state: sound,
    order: (choice) => ({ ...choice, asked: 'not-sure' }),
  },
  'the answer of the guest is none': {
    state: sound,
    order: (choice) => ({ ...choice, asked: 'none' }),
  },
  'the need is none that can be asked': {
    state: sound,
    order: (choice) => ({
      ...choice,
      needs: choice.needs.map((need) => ({ ...need, code: 'kelp-dust' })),
    }),
  },
  'the acceptance is none that there is': {
    state: sound,
    order: (choice) => ({ ...choice, caution: 41 }),
  },
  'nothing is wrong': { state: sound, blocks: isUnfit(sound) },
}

/** A decision that throws is answered as could-not-decide: nothing happens then. */
const isTaken = (decide: () => Decision): boolean => {
  try {
    return codeOf(decide()) === null
  } catch {
    return false
  }
}

describe('the gate of an order with needs', () => {
  it('[S67] [N36] accepts none that should block, whatever is missing, stale, malformed or throwing', () => {
    const counts = { tried: 0, toBlock: 0, acceptedThatShouldBlock: 0, accepted: 0 }
    const wrong: string[] = []
    for (const [name, { state, over = {}, order, readBack = true, blocks }] of Object.entries(
      faults,
    ))
      for (const choice of orders) {
        const told = { ...ready(), state }
        const sent = (order?.(choice) ?? choice) as BuildChoice
        const isAccepted = isTaken(() =>
          when(told, { type: 'send', builds: [sent], readBack }, over),
        )
        const shouldBlock = blocks?.(choice) ?? true
        counts.tried += 1
        counts.toBlock += shouldBlock ? 1 : 0
        counts.accepted += isAccepted ? 1 : 0
        if (isAccepted && shouldBlock) {
          counts.acceptedThatShouldBlock += 1
          wrong.push(`${name}: ${choice.item} for ${JSON.stringify(choice.needs)}`)
        }
      }
    console.log(`faults: ${JSON.stringify(counts)} over ${Object.keys(faults).length} points`)
    expect(wrong.slice(0, 5)).toEqual([])
    expect(counts.tried).toBeGreaterThan(10_000)
    expect(counts.toBlock).toBeGreaterThan(10_000)
    expect(counts.accepted).toBeGreaterThan(500)
  })

  it('[S67] lets orders without needs go on where needs can’t be checked', () => {
    for (const name of ['the revision is stale', 'the checker throws', 'the level is missing']) {
      const told = { ...ready(), state: faults[name]?.state ?? sound }
      expect(codeOf(when(told, send(choose('garden-chicken')), faults[name]?.over))).toBeNull()
    }
  })

  it('[S80] holds what it can’t check again', () => {
    const milk = needs({ code: 'milk', handling: 'keep-apart', reason: null })
    const plain = { cheddar: 'no', almonds: 'no', 'yogurt-sauce': 'no' } as const
    const told = ready(send(choose('bean-and-pepper', plain, milk), choose('garden-chicken')))
    const events = eventsOf(
      when(
        told,
        { type: 'notSameProduct', ingredient: 'relish' },
        faults['the checker throws']?.over,
      ),
    )
    expect(events.slice(1)).toEqual([
      { type: 'buildHeld', ticket: 1, letter: 'A', reason: 'label' },
    ])
    const after = events.reduce(
      (state, event, index) =>
        evolve(state, { ...event, position: 99 + index, at: state.at, command: 'c' }),
      told.state,
    )
    expect(findBuild(after, 1, 'A')?.hold?.reason).toBe('label')
  })
})
