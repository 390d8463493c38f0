import { describe, expect, it } from 'vitest'
import { isFine, judgeComponent } from '#lib/needs/judge.ts'
import { kitchenOf } from '#lib/rooms/care/facts/kitchen-of.ts'
import { backup, kitchen, need, touching } from '#tests/support/kitchens.ts'
import { changePan, type Given, given, running } from '#tests/support/service.ts'

const milk = { said: { cheese: { milk: 'contains' as const } } }
const levelIn = (plan: Parameters<typeof kitchen>[0], id: string) =>
  judgeComponent(kitchen({ ...milk, ...plan }), id, [need('milk')]).level

describe('a scoop that was in another pan', () => {
  const soiled = [{ component: 'cheese', by: 'leaf' }]

  it('[N50] reaches the pan that is marked, and not the one of the component that it is a scoop of', () => {
    expect(levelIn({ soiled: [{ component: 'leaf', by: 'cheese' }] }, 'leaf')).toBe('caution')
    expect(levelIn({ soiled }, 'leaf')).toBe('ok')
  })

  it('[N50] reaches what touches a clean pan no more than that pan', () => {
    const contacts = [touching('beside', 'leaf', 'sauce')]
    expect(levelIn({ soiled, contacts }, 'sauce')).toBe('ok')
  })

  it('[N50] brings what its own pan holds and touches', () => {
    const over = { contacts: [touching('griddle', 'sauce', 'cheese')] }
    expect(levelIn({ ...over, soiled: [{ component: 'leaf', by: 'sauce' }] }, 'leaf')).toBe(
      'caution',
    )
    const chain = [
      { component: 'heart', by: 'leaf' },
      { component: 'leaf', by: 'cheese' },
    ]
    expect(levelIn({ soiled: chain }, 'heart')).toBe('caution')
  })

  it('[N51] a lent one reaches both ways, over what either touches', () => {
    const lent = [{ component: 'leaf', by: 'sauce' }]
    const beside = (id: string) => ({ lent, contacts: [touching('beside', id, 'cheese')] })
    expect(levelIn(beside('sauce'), 'leaf')).toBe('caution')
    expect(levelIn(beside('leaf'), 'sauce')).toBe('caution')
    expect(levelIn({ lent, soiled: [{ component: 'sauce', by: 'cheese' }] }, 'leaf')).toBe(
      'caution',
    )
    expect(levelIn({ lent }, 'leaf')).toBe('ok')
  })

  it('[N51] a lent one is cleared by a protected back-up pan of either, as any shared scoop is', () => {
    const lent = [{ component: 'leaf', by: 'cheese' }]
    const from = { backups: [backup('leaf')], ready: ['leaf'] }
    expect(
      judgeComponent(kitchen({ ...milk, lent, ...from }), 'leaf', [need('milk')]),
    ).toMatchObject({ level: 'ok', fromBackup: true })
    const bare = { backups: [backup('leaf', false)], ready: ['leaf'] }
    expect(levelIn({ lent, ...bare }, 'leaf')).toBe('caution')
  })
})

describe('a pan that is changed', () => {
  const soil = (pan: string, by: string): Given => ({ type: 'soilPan', pan, by })
  const fits = (told: ReturnType<typeof given>, component: string) =>
    isFine(judgeComponent(kitchenOf(running(told)), component, [need('milk')]).level)

  it('[N50] is clean at once, though the other still holds something of the one before', () => {
    const both = given(soil('pan-cheddar', 'rice'))
    expect(fits(both, 'rice')).toBe(false)
    const changed = given(soil('pan-cheddar', 'rice'), changePan('pan-rice', 900_000))
    expect(changed.state.pans['pan-cheddar']?.soiledBy).toEqual(['rice'])
    expect(fits(changed, 'rice')).toBe(true)
  })

  const chained = [soil('pan-rice', 'cheddar'), soil('pan-beans', 'rice')]

  it('[K50] leaves on a third what its scoop carried there', () => {
    const told = given(...chained, changePan('pan-rice', 900_000))
    expect(told.state.pans['pan-rice']?.soiledBy).toEqual([])
    expect(told.state.pans['pan-beans']?.soiledBy).toEqual(['rice', 'cheddar'])
    expect(fits(told, 'beans')).toBe(false)
    expect(fits(given(...chained, changePan('pan-cheddar', 900_000)), 'beans')).toBe(false)
    const all = ['rice', 'cheddar', 'beans'].map((id) => changePan(`pan-${id}`, 900_000))
    expect(fits(given(...chained, ...all), 'beans')).toBe(true)
  })

  it('[K50] leaves it where it was emptied and washed, too', () => {
    const {
      amount,
      type: _,
      ...food
    } = changePan('pan-rice', 900_000) as Extract<Given, { type: 'changePan' }>
    const told = given(
      ...chained,
      { type: 'correct', pan: 'pan-rice', amount: 0 },
      { ...food, amount, type: 'load', washed: true },
    )
    expect(told.state.pans['pan-rice']?.soiledBy).toEqual([])
    expect(told.state.pans['pan-beans']?.soiledBy).toEqual(['rice', 'cheddar'])
  })
})
