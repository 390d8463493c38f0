import { describe, expect, it } from 'vitest'
import { tellFinding } from '#lib/needs/finding-told.ts'
import { judgeComponent } from '#lib/needs/judge.ts'
import { whyHeld } from '#lib/rooms/care/facts/held.ts'
import { kitchenOf } from '#lib/rooms/care/facts/kitchen-of.ts'
import { sayWhyHeld } from '#lib/rooms/care/words/held-en.ts'
import { panPictures } from '#lib/rooms/pans/facts/pans.ts'
import { pansWords } from '#lib/rooms/pans/words/pans-en.ts'
import { openBuilds } from '#lib/service/tickets.ts'
import { openingCommands } from '#lib/spine/opening-commands.ts'
import { labelOf } from '#lib/station/label.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { sayFinding } from '#lib/words/findings-en.ts'
import { need } from '#tests/support/kitchens.ts'
import {
  backupReady,
  buildIn,
  changePan,
  choose,
  demoStation,
  eventsOf,
  type Given,
  happening,
  NOTHING,
  needs,
  OPENED_AT,
  onward,
  refusalOf,
  running,
  send,
  type Told,
  when,
} from '#tests/support/service.ts'

/**
 * The demo station with nothing shared but the griddle of pita and peppers, and with every claim
 * declared, so that scoops can be lent.
 */
const station: StationDocument = {
  ...demoStation,
  ingredients: demoStation.ingredients.map((one) => ({
    ...one,
    claims: { halal: 'declared', kosher: 'declared' },
  })),
  contacts: (demoStation.contacts ?? []).filter(({ kind }) => kind === 'griddle'),
  tools: [
    ...demoStation.tools,
    { id: 'spare-8', name: 'spare #8', tool: { tool: 'scoop', number: 8 }, usualFor: null },
  ],
}
const opened = happening(
  NOTHING,
  eventsOf(
    when(
      NOTHING,
      { type: 'open', station: station.id, kind: 'real' },
      { station: () => ({ revision: 3, document: station }) },
    ),
  ),
)
const loaded = onward(
  opened,
  ...openingCommands(station, OPENED_AT, { backups: [], spare: 1_000 }),
  { type: 'signOn' },
)

const lend = (component: string, tool: string): Given => ({
  type: 'missScoop',
  component,
  measures: [{ id: tool, count: 1 }],
  yes: true,
})
const ofPeppers = lend('rice', 'scoop-16-peppers')
const ofBeans = lend('rice', 'scoop-8-beans')
const back = (washed = true): Given => ({ type: 'scoopBack', component: 'rice', washed })
const change = (component: string): Given => changePan(`pan-${component}`, 900_000)
const containsSoy = (id: string): Given => {
  const found = station.ingredients.find((one) => one.id === id)
  if (!found) throw new Error(`no ingredient ${id}`)
  const label = labelOf(found)
  return {
    type: 'changeLabel',
    ingredient: id,
    label: { ...label, declarations: { ...label.declarations, soy: 'contains' } },
  }
}
const soil = (pan: string, by: string): Given => ({ type: 'soilPan', pan, by })

const bowl = choose(
  'bean-and-pepper',
  { peppers: 'no', slaw: 'no', cheddar: 'no', almonds: 'no', 'yogurt-sauce': 'no' },
  { base: 'rice', ...needs(need('wheat')) },
)

const judged = (told: Told, component: string, code: string) =>
  judgeComponent(kitchenOf(running(told)), component, [need(code)])
const lentIn = (told: Told) => kitchenOf(running(told)).lent

describe('a scoop that is lent', () => {
  it('[K51] is told with the components that it has been in', () => {
    expect(eventsOf(when(loaded, ofBeans))).toMatchObject([
      { type: 'scoopMissed', component: 'rice', lentBy: ['beans'] },
    ])
    expect(eventsOf(when(loaded, lend('rice', 'spare-8')))[0]).not.toHaveProperty('lentBy')
    const unwashed = onward(loaded, lend('beans', 'spare-8'), {
      type: 'scoopBack',
      component: 'beans',
    })
    expect(eventsOf(when(unwashed, lend('rice', 'spare-8')))).toMatchObject([{ lentBy: ['beans'] }])
  })

  it('[N51] brings what its own pan touches, so that no order simply fits', () => {
    expect(refusalOf(when(loaded, send(bowl)))).toBeNull()
    const lent = onward(loaded, ofPeppers)
    expect(judged(lent, 'rice', 'wheat')).toMatchObject({
      level: 'caution',
      findings: [{ why: 'contact', touches: 'pita', contact: 'scoop' }],
    })
    expect(refusalOf(when(lent, send(bowl)))).not.toBeNull()
  })

  it('[N51] brings what went into the pan of either since', () => {
    const lent = onward(loaded, ofBeans)
    expect(judged(lent, 'rice', 'milk').level).toBe('ok')
    expect(judged(onward(lent, soil('pan-beans', 'cheddar')), 'rice', 'milk')).toMatchObject({
      level: 'caution',
      findings: [{ why: 'contact', touches: 'cheddar' }],
    })
    expect(judged(onward(lent, soil('pan-rice', 'cheddar')), 'beans', 'milk').level).toBe('caution')
  })

  it.each([
    ['lender', 'cumin', 'rice', 'beans'],
    ['borrower', 'brown-rice', 'beans', 'rice'],
  ])('[N51] brings what the label of the %s says since', (_, ingredient, component, touches) => {
    const told = onward(loaded, ofBeans, containsSoy(ingredient))
    expect(judged(told, component, 'soy')).toMatchObject({
      level: 'caution',
      findings: [{ why: 'contact', touches, contact: 'scoop' }],
    })
  })

  it.each([
    ['lent', 'waiting', [] as const, ofPeppers],
    ['lent', 'making', ['start'] as const, ofPeppers],
    ['soiled', 'made', ['start', 'finish'] as const, soil('pan-beans', 'pita')],
  ])('[N51] holds a guest’s build once it is %s and the build is %s', (_, __, steps, happens) => {
    const acts = steps.map(
      (type): Given => ({
        type,
        ticket: 1,
        letter: 'A',
        ...(type === 'start' ? { read: true } : {}),
      }),
    )
    const told = onward(loaded, ofBeans, send(bowl), ...acts, happens)
    expect(buildIn(told, '1A').hold).toMatchObject({ reason: 'contact' })
    const { ticket, build } = openBuilds(running(told))[0] ?? {}
    if (!ticket || !build?.hold) throw new Error('nothing is held')
    expect(sayWhyHeld(whyHeld(running(told), build, build.hold))).toContain(
      'The scoop of Black beans stood in for the one of Brown rice.',
    )
  })

  it('[N51] holds nothing that was made before it was lent', () => {
    const made = onward(
      loaded,
      send(bowl),
      { type: 'start', ticket: 1, letter: 'A', read: true },
      { type: 'finish', ticket: 1, letter: 'A' },
      ofPeppers,
    )
    expect(buildIn(made, '1A').hold).toBeNull()
  })

  it('[N51] is cleared by a protected back-up pan', () => {
    const told = onward(loaded, ofPeppers, backupReady('rice'))
    expect(judged(told, 'rice', 'wheat')).toMatchObject({ level: 'ok', fromBackup: true })
  })

  it('[K51] touches both pans until both are changed once it is back', () => {
    const lent = onward(loaded, ofBeans)
    const edge = [{ component: 'rice', by: 'beans' }]
    expect(lentIn(lent)).toEqual(edge)
    const inUse = onward(lent, change('rice'), change('beans'))
    expect(lentIn(inUse)).toEqual(edge)
    const returned = onward(inUse, back())
    expect(lentIn(returned)).toEqual(edge)
    expect(lentIn(onward(returned, change('rice')))).toEqual(edge)
    expect(lentIn(onward(returned, change('beans')))).toEqual(edge)
    expect(lentIn(onward(returned, change('beans'), change('rice')))).toEqual([])
    expect(onward(returned, change('beans'), change('rice')).state.lent).toEqual({})
  })

  it('[K51] touches a pan that was emptied no more once it is washed', () => {
    const { type: _, ...food } = change('rice') as Extract<Given, { type: 'changePan' }>
    const empty = onward(loaded, ofBeans, back(), change('beans'), {
      type: 'correct',
      pan: 'pan-rice',
      amount: 0,
    })
    expect(lentIn(onward(empty, { ...food, type: 'load' }))).toHaveLength(1)
    expect(lentIn(onward(empty, { ...food, type: 'load', washed: true }))).toEqual([])
  })

  it('[K51] that came back unwashed touches its own new pan again', () => {
    const unwashed = onward(loaded, ofBeans, back(false), change('beans'), change('rice'))
    expect(judged(onward(unwashed, containsSoy('brown-rice')), 'beans', 'soy').level).toBe(
      'caution',
    )
    const washed = onward(unwashed, ofBeans, back(), change('beans'), change('rice'))
    expect(lentIn(washed)).toEqual([])
  })

  it('[K50] leaves on the other pan what was in the one that is changed', () => {
    const told = onward(loaded, ofBeans, soil('pan-beans', 'cheddar'), back(), change('beans'))
    expect(told.state.pans['pan-rice']?.soiledBy).toEqual(['cheddar'])
    expect(judged(told, 'rice', 'milk').level).toBe('caution')
    expect(judged(onward(told, change('rice')), 'rice', 'milk').level).toBe('ok')
  })

  it('[K51] isn’t known of an older log, which folds as it did', () => {
    const [event] = eventsOf(when(loaded, ofPeppers))
    if (event?.type !== 'scoopMissed') throw new Error('nothing was lent')
    const { lentBy: _, ...older } = event
    const told = happening(loaded, [older])
    expect(told.state.lent).toEqual({})
    expect(judged(told, 'rice', 'wheat').level).toBe('ok')
  })

  it('[K52] is said at both pans, until both are changed', () => {
    const pictures = (told: Told) => panPictures(running(told))
    const lent = onward(loaded, ofBeans)
    expect(pictures(lent)['pan-rice']).toMatchObject({ standInFrom: ['beans'], lentTo: [] })
    expect(pictures(lent)['pan-beans']).toMatchObject({ standInFrom: [], lentTo: ['rice'] })
    expect(pansWords.standInFrom(['Black beans'])).toBe('stand-in scoop from black beans')
    expect(pansWords.lentTo(['Brown rice'])).toBe('scoop lent to brown rice')
    const half = onward(lent, back(), change('rice'))
    expect(pictures(half)['pan-rice']).toMatchObject({ standInFrom: ['beans'] })
    expect(pictures(onward(half, change('beans')))['pan-rice']).toMatchObject({ standInFrom: [] })
  })

  it('[K52] is said to the guest as shared', () => {
    const told = onward(loaded, ofBeans, containsSoy('cumin'))
    const [finding] = judged(told, 'rice', 'soy').findings
    expect(finding && sayFinding(tellFinding(running(told).station, finding))).toBe(
      'Brown rice shares tools or a place on the line with black beans, which contain soy',
    )
  })
})
