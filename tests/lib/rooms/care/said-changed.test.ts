import { describe, expect, it } from 'vitest'
import { saidOf } from '#lib/rooms/care/facts/said.ts'
import { askableAllergens } from '#lib/station/codes/askable.ts'
import {
  at,
  choose,
  codeOf,
  demoStation,
  eventsOf,
  type Given,
  needs,
  onward,
  ready,
  refusalOf,
  running,
  send,
  type Told,
  when,
} from '#tests/support/service.ts'

const READY = ready()
const WITHOUT_MILK = { cheddar: 'no', almonds: 'no', 'yogurt-sauce': 'no' } as const
const out = (code: string) => needs({ code, handling: 'leave-out', reason: null })
const apart = (code: string) => needs({ code, handling: 'keep-apart', reason: null })

const chicken = choose('garden-chicken', WITHOUT_MILK, out('molluscs'))
const milkOut = choose('garden-chicken', WITHOUT_MILK, out('milk'))

const warned: Given = {
  type: 'changeLabel',
  ingredient: 'chicken-breast',
  label: {
    declarations: {
      ...demoStation.ingredients.find((one) => one.id === 'chicken-breast')?.declarations,
      molluscs: 'may-contain',
    },
    traits: ['poultry'],
    claims: {},
    readOn: '2026-11-25',
    readBy: 'JB',
  },
  product: 'same',
}

const saidIn = (told: Told, choice: typeof chicken): readonly string[] =>
  saidOf(running(told), choice) ?? []

const sent = (said: readonly (readonly string[])[], ...builds: (typeof chicken)[]): Given => ({
  type: 'send',
  builds,
  readBack: true,
  said: said.map((one) => [...one]),
})

describe('what was said of a need', () => {
  it('[C73] is compared when the order arrives: what changed since is read back again', () => {
    const said = saidIn(READY, chicken)
    expect(said).toEqual([])
    expect(codeOf(when(READY, sent([said], chicken)))).toBeNull()
    const after = onward(READY, warned)
    expect(saidIn(after, chicken)).toEqual(['note molluscs'])
    expect(refusalOf(when(after, sent([said], chicken)))).toEqual({
      code: 'said-changed',
      letter: 'A',
    })
    expect(codeOf(when(after, sent([saidIn(after, chicken)], chicken)))).toBeNull()
  })

  it('[C73] is told by the letter of the build that it is of', () => {
    const plain = choose('harbor-tuna')
    const after = onward(READY, warned)
    const command = sent([[], saidIn(READY, chicken)], plain, chicken)
    expect(refusalOf(when(after, command))).toEqual({ code: 'said-changed', letter: 'B' })
  })

  it('[C73] is refused where it was more, less, or of a build that isn’t named', () => {
    const said = saidIn(READY, milkOut)
    expect(said).toEqual(['note milk'])
    expect(codeOf(when(READY, sent([said], milkOut)))).toBeNull()
    for (const other of [
      [],
      ['note egg'],
      ['note milk', 'note egg'],
      ['note milk', 'note milk', 'x'],
    ])
      expect(codeOf(when(READY, sent([other], milkOut))), other.join()).toBe('said-changed')
    expect(codeOf(when(READY, sent([], milkOut)))).toBe('said-changed')
  })

  it('[C73] holds for a change as for an order, and is in no event', () => {
    const told = onward(READY, send(choose('garden-chicken')))
    const to = (said: readonly string[]): Given => ({
      type: 'change',
      ...at('1A'),
      to: milkOut,
      readBack: true,
      said: [...said],
    })
    expect(refusalOf(when(told, to([])))).toEqual({ code: 'said-changed', letter: 'A' })
    const decision = when(told, to(['note milk']))
    expect(codeOf(decision)).toBeNull()
    expect(JSON.stringify(eventsOf(decision))).not.toContain('note milk')
  })

  it('[C73] isn’t compared where the sender doesn’t tell it', () => {
    const after = onward(READY, warned)
    expect(codeOf(when(after, send(chicken)))).toBeNull()
  })

  it('[C73] with a back-up pan names it, so that what is taken from the line isn’t as said', () => {
    const kept = choose('garden-chicken', { almonds: 'no', 'yogurt-sauce': 'no' }, apart('egg'))
    const said = saidIn(READY, kept)
    expect(said.some((one) => one.startsWith('back-up '))).toBe(true)
    const without = said.filter((one) => !one.startsWith('back-up '))
    expect(codeOf(when(READY, sent([said], kept)))).toBeNull()
    expect(codeOf(when(READY, sent([without], kept)))).toBe('said-changed')
  })

  it('[C73] fails closed: where the needs can’t be checked it is never as said', () => {
    const said = saidIn(READY, milkOut)
    const checker = () => {
      throw new Error('no answer')
    }
    expect(saidOf(running(READY), milkOut, checker)).toBeNull()
    expect(codeOf(when(READY, sent([said], milkOut), { checker }))).toBe('needs-not-checked')
  })

  it('[C73] says something of every note, for everything that can be asked', () => {
    let notes = 0
    for (const code of askableAllergens(demoStation)) {
      const choice = choose('bean-and-pepper', {}, out(code))
      const said = saidIn(READY, choice)
      expect(said.every((one) => one.includes(code))).toBe(true)
      notes += said.length
      expect(codeOf(when(READY, sent([[...said, 'note nothing']], choice)))).not.toBeNull()
    }
    expect(notes).toBeGreaterThan(3)
  })
})
