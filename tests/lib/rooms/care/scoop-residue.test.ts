/** What scoops carry, followed pan by pan and tool by tool, against what the rules say may be there. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Reach, reachOf } from '#lib/needs/contact.ts'
import { kitchenOf } from '#lib/rooms/care/facts/kitchen-of.ts'
import { pansOf } from '#lib/station/find.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import {
  batches,
  demoStation,
  eventsOf,
  foodOf,
  type Given,
  happening,
  NOTHING,
  ofPortions,
  onward,
  running,
  type Told,
  when,
} from '#tests/support/service.ts'
import { isShort, stretched } from '#tests/support/stretch.ts'

/** Foods that are alike to every guest, so that any of their scoops may be lent, and no shared place. */
const COMPONENTS = ['rice', 'beans', 'peppers', 'chicken', 'tuna'] as const
const TOOLS = ['scoop-16-rice', 'scoop-8-beans', 'scoop-16-peppers', 'scoop-8-tuna', 'spare-8']

const station: StationDocument = {
  ...demoStation,
  ingredients: demoStation.ingredients.map((one) => ({
    ...one,
    declarations: Object.fromEntries(Object.keys(one.declarations).map((code) => [code, 'free'])),
    traits: [],
    claims: { halal: 'declared', kosher: 'declared' },
  })),
  tools: [
    ...demoStation.tools,
    { id: 'spare-8', name: 'spare #8', tool: { tool: 'scoop', number: 8 }, usualFor: null },
  ],
  contacts: [],
}

const opened: Told = onward(
  happening(
    NOTHING,
    eventsOf(
      when(
        NOTHING,
        { type: 'open', station: station.id, kind: 'real' },
        { station: () => ({ revision: 3, document: station }) },
      ),
    ),
  ),
  ...batches(),
)
const panOf = (component: string) => `pan-${component}`
const full = (component: string) => ({ amount: ofPortions(component, 3), ...foodOf(component) })

const one = fc.constantFrom(...COMPONENTS)
const command: fc.Arbitrary<Given> = fc.oneof(
  {
    weight: 4,
    arbitrary: fc
      .tuple(one, one)
      .map(([into, by]): Given => ({ type: 'soilPan', pan: panOf(into), by })),
  },
  {
    weight: 4,
    arbitrary: fc.tuple(one, fc.constantFrom(...TOOLS)).map(
      ([component, id]): Given => ({
        type: 'missScoop',
        component,
        measures: [{ id, count: 1 }],
        yes: true,
      }),
    ),
  },
  {
    weight: 3,
    arbitrary: fc
      .tuple(one, fc.boolean())
      .map(([component, washed]): Given => ({ type: 'scoopBack', component, washed })),
  },
  {
    weight: 6,
    arbitrary: one.map((id): Given => ({ type: 'changePan', pan: panOf(id), ...full(id) })),
  },
  {
    weight: 2,
    arbitrary: one.map((id): Given => ({ type: 'correct', pan: panOf(id), amount: 0 })),
  },
  {
    weight: 3,
    arbitrary: fc
      .tuple(one, fc.boolean())
      .map(([id, washed]): Given => ({ type: 'load', pan: panOf(id), washed, ...full(id) })),
  },
)

/** By pan's component and by tool: of which components there is something in it. */
interface Residue {
  readonly pans: Record<string, Set<string>>
  readonly tools: Record<string, Set<string>>
  /** By component, the tools in use beside its own. */
  readonly standIns: Record<string, string>
  /** By tool, the components that it was lent to and not washed since. */
  readonly lentTo: Record<string, Set<string>>
}

const ownTool = (component: string) => station.tools.find((one) => one.usualFor === component)?.id

const add = (to: Set<string> | undefined, what: Iterable<string> = []) => {
  for (const each of what) to?.add(each)
}

/** Whatever tool is used goes on touching its pans. */
const used = ({ pans, tools, standIns }: Residue) => {
  for (let before = -1, sum = 0; before !== sum; ) {
    before = sum
    for (const component of COMPONENTS)
      for (const tool of [ownTool(component), standIns[component]]) {
        if (tool === undefined) continue
        tools[tool] ??= new Set()
        add(pans[component], tools[tool])
        add(tools[tool], pans[component])
      }
    sum = [...Object.values(pans), ...Object.values(tools)].reduce((all, set) => all + set.size, 0)
  }
}

const cleanPan = (residue: Residue, component: string) => {
  residue.pans[component] = new Set([component])
  for (const { id, usualFor } of station.tools) {
    if (id !== residue.standIns[component] && usualFor !== component) continue
    const other = usualFor !== null && usualFor !== component
    // A clean pan gets a clean scoop, but for one that has been in another component's, too.
    if (!other && [...(residue.lentTo[id] ?? [])].every((one) => one === component))
      residue.tools[id] = new Set([component])
  }
}

const follow = (residue: Residue, command: Given) => {
  const { pans, tools, standIns, lentTo } = residue
  if (command.type === 'soilPan') {
    const into = command.pan.slice('pan-'.length)
    const both = [...(pans[into] ?? []), ...(pans[command.by] ?? [])]
    add(pans[into], both)
    add(pans[command.by], both)
  } else if (command.type === 'missScoop') {
    const [measure] = command.measures ?? []
    if (measure) {
      standIns[command.component] = measure.id
      lentTo[measure.id] = new Set([...(lentTo[measure.id] ?? []), command.component])
    }
  } else if (command.type === 'scoopBack') {
    const tool = standIns[command.component]
    delete standIns[command.component]
    if (command.washed && tool !== undefined) {
      tools[tool] = new Set()
      delete lentTo[tool]
    }
  } else if (command.type === 'changePan' || (command.type === 'load' && command.washed))
    cleanPan(residue, command.pan.slice('pan-'.length))
  used(residue)
}

const reachIn = (told: Told): ReadonlyMap<string, Reach> => {
  const { soiled, lent } = kitchenOf(running(told))
  const reach = reachOf(station, soiled, lent)
  if (!reach) throw new Error('contact is known')
  return reach
}

describe('what scoops carry', () => {
  it('[N50] [N51] [K50] [K51] is never more than what the pans are said to be touched by', () => {
    const counts = { lent: 0, left: 0, carried: 0, ended: 0 }
    fc.assert(
      fc.property(fc.array(command, { minLength: 15, maxLength: 40 }), (commands) => {
        let told = COMPONENTS.reduce(
          (so, id) => onward(so, { type: 'load', pan: panOf(id), ...full(id) }),
          opened,
        )
        const residue: Residue = {
          pans: Object.fromEntries(COMPONENTS.map((id) => [id, new Set([id])])),
          tools: {},
          standIns: {},
          lentTo: {},
        }
        used(residue)
        for (const each of commands) {
          const decision = when(told, each)
          if ('refusal' in decision) continue
          const before = Object.keys(running(told).lent)
          told = happening(told, decision.events)
          follow(residue, each)
          counts.lent += decision.events.filter((event) => 'lentBy' in event).length
          counts.left += decision.events.filter((event) => 'leaves' in event).length
          counts.ended += before.filter((key) => !running(told).lent[key]).length
          const reach = reachIn(told)
          for (const [component, found] of Object.entries(residue.pans)) {
            const said = new Set([
              component,
              ...(reach.get(component)?.line ?? []).map((reached) => reached.component),
            ])
            counts.carried += found.size - 1
            expect(
              [...found].filter((of) => !said.has(of)),
              component,
            ).toEqual([])
          }
        }
      }),
      { seed: 20_261_128, numRuns: stretched(300) },
    )
    if (isShort) return
    expect(Math.min(counts.lent, counts.left, counts.carried)).toBeGreaterThan(100)
    expect(counts.ended).toBeGreaterThan(10)
  })

  it('[K51] is nothing any more once every scoop is back and washed and every pan changed', () => {
    fc.assert(
      fc.property(fc.array(command, { maxLength: 30 }), (commands) => {
        const clean: readonly Given[] = [
          ...commands,
          ...COMPONENTS.flatMap((component): Given[] => [
            ...TOOLS.map(
              (id): Given => ({
                type: 'missScoop',
                component,
                measures: [{ id, count: 1 }],
                yes: true,
              }),
            ).flatMap((miss): Given[] => [miss, { type: 'scoopBack', component, washed: true }]),
          ]),
          ...COMPONENTS.map((id): Given => ({ type: 'changePan', pan: panOf(id), ...full(id) })),
          ...COMPONENTS.map((id): Given => ({ type: 'changePan', pan: panOf(id), ...full(id) })),
        ]
        const told = clean.reduce((so, each) => {
          const decision = when(so, each)
          return 'refusal' in decision ? so : happening(so, decision.events)
        }, opened)
        for (const { component } of pansOf(station))
          expect(reachIn(told).get(component)?.line, component).toEqual([])
      }),
      { seed: 20_261_128, numRuns: stretched(100) },
    )
  })
})
