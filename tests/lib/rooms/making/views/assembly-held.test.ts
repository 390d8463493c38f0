import { describe, expect, test } from 'vitest'
import type { WrongScoop } from '#lib/rooms/care/facts/held.ts'
import { sayWhyHeld } from '#lib/rooms/care/words/held-en.ts'
import { type AssemblyView, assemblyView } from '#lib/rooms/making/views/assembly.ts'
import { stoppedBuilds } from '#lib/rooms/making/views/assembly-stop.ts'
import type { NowBuild } from '#lib/rooms/making/views/now-build.ts'
import { waitingRemakes } from '#lib/rooms/making/views/waiting-remakes.ts'
import type { BuildChoice } from '#lib/service/events/build-choice.ts'
import type { Need } from '#lib/station/codes/codes.ts'
import {
  at,
  change,
  choose,
  needs,
  onward,
  ready,
  running,
  send,
  type Told,
} from '#tests/support/service.ts'

const keepApart = (code: Need['code']): Need => ({
  code,
  handling: 'keep-apart',
  reason: 'allergy',
})
const start = (name: string) => ({ type: 'start', ...at(name) }) as const
const finish = (name: string) => ({ type: 'finish', ...at(name) }) as const

const view = (told: Told, chosen: string | null = null): AssemblyView =>
  assemblyView(running(told), chosen)

const nowOf = (told: Told, chosen: string | null = null): NowBuild => {
  const { now } = view(told, chosen)
  if (!now) throw new Error('nothing to make')
  return now
}

const plain = () => choose('garden-chicken')
const withoutMilk = (): BuildChoice =>
  choose(
    'bean-and-pepper',
    { cheddar: 'no', 'yogurt-sauce': 'no', almonds: 'no' },
    needs(keepApart('milk')),
  )

describe('a build that is held', () => {
  const milk = keepApart('milk')
  const tell = (name: string) =>
    ({ type: 'tellNeed', ...at(name), asked: 'needs', needs: [milk] }) as const
  const acknowledge = (name: string, foodInIt: boolean) =>
    ({ type: 'acknowledge', ...at(name), foodInIt }) as const

  test('[A18] a need told late stops it in whatever state it is, and says what was told', () => {
    const told = ready(send(plain(), plain(), plain()), start('1B'), start('1C'), finish('1C'))
    const stopped = onward(told, tell('1A'), tell('1B'), tell('1C'))
    expect(stoppedBuilds(running(stopped))).toMatchObject(
      [
        ['1A', 'waiting'],
        ['1B', 'making'],
        ['1C', 'made'],
      ].map(([name, state]) => ({
        name,
        state,
        held: { reason: 'need', asked: 'needs', needs: [milk] },
        differences: null,
      })),
    )
    const held = view(stopped).stopped?.held
    expect(held && sayWhyHeld(held)).toBe('The guest just told us: MILK: keep apart')
    expect(view(stopped).now).toBeNull()
    expect(view(stopped).lastMade).toEqual([])
  })

  test('[A19] answered, it waits as held: after all others, never the next, and isn’t started', () => {
    const told = onward(ready(send(plain()), send(plain()), start('1A')), tell('1A'))
    const answered = onward(told, acknowledge('1A', true))
    expect(view(answered).stopped).toBeNull()
    expect(nowOf(answered).name).toBe('2A')
    expect(view(answered).queue).toMatchObject([{ name: '1A', held: true, keptApart: true }])
    expect(view(answered).next).toBeNull()
    expect(waitingRemakes(running(answered))).toEqual([])
    const shown = nowOf(answered, '1A')
    expect(shown).toMatchObject({ held: true, keepFrom: ['milk'], whyHeld: { reason: 'need' } })
  })

  test('[A19] its change lifts the hold, and it is read anew with another mark', () => {
    const told = onward(ready(send(plain()), start('1A')), tell('1A'), acknowledge('1A', false))
    const before = nowOf(told)
    const lifted = onward(told, change('1A', withoutMilk()))
    expect(nowOf(lifted)).toMatchObject({ held: false, state: 'waiting', whyHeld: null })
    expect(nowOf(lifted).reads).not.toBe(before.reads)
    expect(nowOf(lifted).mark.keepFrom).toEqual(['milk'])
    expect(nowOf(lifted).mark).not.toEqual(before.mark)
  })

  test('[A20] a label and a wrong scoop are told by name', () => {
    const label = onward(ready(send(withoutMilk())), {
      type: 'notSameProduct',
      ingredient: 'soy-sauce',
    })
    expect(view(label).stopped?.held).toEqual({ reason: 'label', ingredients: ['Soy sauce'] })
    const scoop = onward(ready(send(withoutMilk())), {
      type: 'soilPan',
      pan: 'pan-beans',
      by: 'cheddar',
    })
    const held = view(scoop).stopped?.held
    expect(held).toEqual({
      reason: 'contact',
      scoops: [{ pan: 'Black beans', by: 'Cheddar', lent: false, over: null }],
    })
    expect(held && sayWhyHeld(held)).toBe(
      'A wrong scoop went into Black beans: the one of Cheddar.',
    )
  })

  test('[A20] a wrong scoop in a pan that it doesn’t take names what comes between', () => {
    const saidOf = (over: WrongScoop['over']) =>
      sayWhyHeld({
        reason: 'contact',
        scoops: [{ pan: 'Roast peppers', by: 'Cheddar', lent: false, over }],
      })
    const went = 'A wrong scoop went into Roast peppers: the one of Cheddar.'
    expect(saidOf({ component: 'Black beans', isPlural: true, touches: true })).toBe(
      `${went} Black beans touch roast peppers.`,
    )
    expect(saidOf({ component: 'Pita', isPlural: false, touches: false })).toBe(
      `${went} Pita can be reached by it.`,
    )
    expect(saidOf({ component: null, isPlural: false, touches: false })).toBe(
      `${went} It can reach this one.`,
    )
    const beans = ready(send(withoutMilk()))
    const held = view(onward(beans, { type: 'soilPan', pan: 'pan-chicken', by: 'cheddar' })).stopped
    expect(held?.held).toEqual({
      reason: 'contact',
      scoops: [
        {
          pan: 'Herb chicken',
          by: 'Cheddar',
          lent: false,
          over: { component: 'Roast peppers', isPlural: true, touches: true },
        },
      ],
    })
  })

  test('[A20] one that is cancelled while held only says that it is cancelled', () => {
    const told = onward(ready(send(plain()), start('1A')), tell('1A'), {
      type: 'cancel',
      ...at('1A'),
    })
    const [stopped] = stoppedBuilds(running(told))
    expect(stopped).toMatchObject({ name: '1A', held: null, differences: null })
  })
})
