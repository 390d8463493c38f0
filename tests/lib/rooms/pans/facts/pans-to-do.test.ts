import { describe, expect, test } from 'vitest'
import { shortByComponent, toDos, usualLoads } from '#lib/rooms/pans/facts/pans-to-do.ts'
import { shortBuilds } from '#lib/rooms/pans/facts/short.ts'
import { effectOfStopping, itemPictures } from '#lib/rooms/pans/views/items-left.ts'
import { pansOf } from '#lib/station/find.ts'
import { readAll } from '#tests/support/food.ts'
import {
  at,
  choose,
  cookedService,
  type Given,
  given,
  happening,
  onward as later,
  load,
  needs,
  ofPortions,
  openedService,
  running,
  send,
} from '#tests/support/service.ts'

const correct = (component: string, portions: number): Given => ({
  type: 'correct',
  pan: `pan-${component}`,
  amount: ofPortions(component, portions),
})

const stop = (what: 'component' | 'item', id: string): Given => ({ type: 'stopSelling', what, id })

const chicken = () => send(choose('garden-chicken'))

describe('loading as usual', () => {
  test('[P8] every pan into which nothing was put gets its usual portions, and no other', () => {
    const one = later(cookedService(), load('pan-rice', ofPortions('rice', 3)))
    const loads = usualLoads(running(one))
    expect(loads.map(({ pan }) => pan)).not.toContain('pan-rice')
    expect(loads).toHaveLength(pansOf(running(one).station).length - 1)
    const loaded = later(one, ...loads.map(({ pan, amount }) => load(pan, amount)))
    expect(running(loaded).pans['pan-beans']?.amount).toBe(ofPortions('beans', 24))
    expect(running(loaded).pans['pan-pita']?.amount).toBe(24)
    expect(usualLoads(running(loaded))).toEqual([])
  })

  test('[P8] a pan that was used up is not loaded with the others', () => {
    expect(usualLoads(running(given(correct('tuna', 0))))).toEqual([])
  })
})

describe('what there is to do about guests and labels', () => {
  const beansNoEgg = () =>
    send(
      choose(
        'bean-and-pepper',
        { slaw: 'no', cheddar: 'no', almonds: 'no', 'yogurt-sauce': 'no' },
        needs({ code: 'egg', handling: 'leave-out', reason: null }),
      ),
    )

  test('[P20] guests to find come first, then builds that are held, then all else', () => {
    const told = given(
      beansNoEgg(),
      { type: 'start', ...at('1A'), read: true },
      { type: 'finish', ...at('1A') },
      { type: 'handOver', ...at('1A') },
      beansNoEgg(),
      send(choose('harbor-tuna')),
      correct('chicken', 0),
      { type: 'tellNeed', ...at('3A'), asked: 'not-sure', needs: [] },
      { type: 'notSameProduct', ingredient: 'black-beans' },
    )
    expect(toDos(running(told))).toMatchObject([
      { kind: 'find', reason: 'label', builds: ['1A'] },
      { kind: 'hold', reason: 'label', builds: ['2A'] },
      { kind: 'hold', reason: 'need', builds: ['3A'] },
      { kind: 'read-label', ingredient: 'black-beans' },
      { kind: 'product-before', pan: 'pan-beans' },
      { kind: 'sold-out', component: 'chicken' },
    ])
  })

  test('[P16] a label that nobody ever read is asked for last, one that changed before sold out', () => {
    const unread = (told: ReturnType<typeof given>) => {
      const state = running(told)
      const ingredients = state.station.ingredients.map((one) =>
        one.id === 'cumin' ? { ...one, readOn: null } : one,
      )
      return { ...state, station: { ...state.station, ingredients } }
    }
    const kinds = toDos(
      unread(given(correct('tuna', 0), { type: 'notSameProduct', ingredient: 'almonds' })),
    ).map((one) => [one.kind, 'ingredient' in one ? one.ingredient : null])
    expect(kinds).toEqual([
      ['read-label', 'almonds'],
      ['product-before', null],
      ['sold-out', null],
      ['read-label', 'cumin'],
    ])
  })
})

describe('what there is to do', () => {
  test('[P9] nothing is asked for while every pan holds a quarter and fills every build', () => {
    expect(toDos(running(given(chicken())))).toEqual([])
  })

  test('[P9] the clock comes first, then loading, short builds, sold out, nearly empty', () => {
    const told = happening(
      given(
        chicken(),
        correct('chicken', 0),
        correct('tuna', 0),
        correct('peppers', 7),
        correct('slaw', 2),
      ),
      [{ type: 'clockJumped', byMs: -60_000 }],
      null,
    )
    const jumped = later(told, ...readAll(told))
    expect(toDos(running(jumped)).map((one) => [one.kind, 'pan' in one ? one.pan : null])).toEqual([
      ['confirm-clock', null],
      ['short', 'pan-chicken'],
      ['sold-out', 'pan-tuna'],
      ['nearly-empty', 'pan-slaw'],
      ['nearly-empty', 'pan-peppers'],
    ])
    expect(toDos(running(openedService())).map((one) => one.kind)).toEqual(['load'])
  })

  test('[P10] builds that are short are named newest first', () => {
    const short = given(
      chicken(),
      send(choose('bean-and-pepper')),
      chicken(),
      chicken(),
      { type: 'start', ...at('4A') },
      correct('chicken', 1),
    )
    expect([...shortBuilds(running(short)).keys()].sort()).toEqual(['1A', '3A'])
    expect(shortByComponent(running(short)).get('chicken')).toEqual(['3A', '1A'])
    expect(toDos(running(short))[0]).toEqual({
      kind: 'short',
      pan: 'pan-chicken',
      component: 'chicken',
      lacking: 2,
      builds: ['3A', '1A'],
    })
  })

  test('[P11] what is not sold by choice is asked for only where builds are short of it', () => {
    const stopped = given(chicken(), stop('component', 'chicken'), stop('component', 'tuna'))
    const low = later(stopped, correct('tuna', 0), correct('chicken', 2))
    expect(toDos(running(low))).toEqual([])
    expect(toDos(running(later(low, correct('chicken', 0)))).map((one) => one.kind)).toEqual([
      'short',
    ])
  })
})

describe('what stopping means for the items', () => {
  test('[P12] without its heart an item can’t be sold, without another part it is sold', () => {
    expect(effectOfStopping(running(given()), 'chicken')).toEqual({
      cannot: ['garden-chicken'],
      without: [],
      otherBase: [],
    })
    expect(effectOfStopping(running(given()), 'almonds')).toEqual({
      cannot: [],
      without: ['bean-and-pepper'],
      otherBase: [],
    })
  })

  test('[P12] a base stops its items only where no other base is left', () => {
    const all = ['garden-chicken', 'bean-and-pepper', 'harbor-tuna']
    expect(effectOfStopping(running(given()), 'pita')).toEqual({
      cannot: [],
      without: [],
      otherBase: all,
    })
    expect(effectOfStopping(running(given(correct('rice', 0))), 'pita')).toEqual({
      cannot: all,
      without: [],
      otherBase: [],
    })
  })

  test('[P12] what it says is what then holds for every item', () => {
    for (const { id } of running(given()).station.components) {
      const effect = effectOfStopping(running(given()), id)
      const then = itemPictures(running(given(stop('component', id))))
      for (const item of then) {
        expect(effect.cannot.includes(item.id), `${id}: ${item.id}`).toBe(item.remaining === 0)
        expect(effect.without.includes(item.id), `${id}: ${item.id}`).toBe(item.gone.includes(id))
      }
    }
  })

  test('[P12] an item that isn’t sold anyway is not named', () => {
    const told = given(stop('item', 'garden-chicken'))
    expect(effectOfStopping(running(told), 'chicken').cannot).toEqual([])
    expect(itemPictures(running(told))[0]).toMatchObject({ selling: false, remaining: 0 })
  })
})
