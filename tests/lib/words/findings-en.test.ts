import { describe, expect, test } from 'vitest'
import { tellFinding } from '#lib/needs/finding-told.ts'
import { judgeComponent } from '#lib/needs/judge.ts'
import type { Kitchen } from '#lib/needs/kitchen.ts'
import type { Need } from '#lib/station/codes/codes.ts'
import { rowFinding, sayFinding, shortFinding } from '#lib/words/findings-en.ts'
import { demoStation } from '#tests/support/service.ts'

const kitchen: Kitchen = { station: demoStation, soiled: [], lent: [], ready: [] }

const said = (component: string, code: string, handling: Need['handling'], at = kitchen) =>
  judgeComponent(at, component, [{ code, handling, reason: null }]).findings.map((one) =>
    sayFinding(tellFinding(at.station, one)),
  )

describe('why something doesn’t fit', () => {
  test('[C44] it is said down to the ingredient', () => {
    expect(said('slaw', 'wheat', 'keep-apart')).toEqual(['Sesame slaw: soy sauce contains wheat'])
    expect(said('cheddar', 'milk', 'leave-out')[0]).toBe('Cheddar contains milk')
    expect(said('chicken', 'vegan', 'leave-out')[0]).toMatch(/^Herb chicken: .* isn’t vegan$/)
  })

  test('[C44] what isn’t known says to read the label first', () => {
    expect(said('tuna', 'soy', 'keep-apart')[0]).toMatch(
      /^Tuna salad: not known whether .* contains soy: read the label first$/,
    )
  })

  test('[C44] what a label warns of and what it touches are said as such', () => {
    const pita = said('pita', 'sesame', 'keep-apart')
    expect(pita[0]).toBe('The label of pita warns: may contain sesame')
    expect(said('rice', 'wheat', 'keep-apart')).toEqual([
      'Brown rice is next to pita, which contains wheat',
    ])
    expect(said('almonds', 'fish', 'keep-apart')).toEqual([
      'Toasted almonds share tools or a place on the line with tuna salad, which contains fish',
    ])
    const silent = { ...kitchen, station: { ...demoStation, contacts: null } }
    expect(said('rice', 'wheat', 'keep-apart', silent)).toEqual([
      'Nobody has said what brown rice can touch on the line',
    ])
  })

  test('[C44] whether a name is plural is what the station says, not how it is spelled', () => {
    const called = (name: string, plural: boolean) => ({
      ...kitchen,
      station: {
        ...demoStation,
        components: demoStation.components.map(({ plural: _, ...one }) =>
          one.id === 'slaw'
            ? {
                ...one,
                name,
                ingredients: ['sesame-oil'],
                recipes: [],
                ...(plural && { plural: true as const }),
              }
            : one,
        ),
      },
    })
    const ofSesameItself = (name: string, plural: boolean) =>
      sayFinding({
        component: name,
        isPlural: plural,
        need: 'sesame',
        handling: 'leave-out',
        why: 'contains',
        ingredient: null,
        contact: null,
      })
    expect(ofSesameItself('Hummus', false)).toBe('Hummus contains sesame')
    expect(ofSesameItself('Almonds', true)).toBe('Almonds contain sesame')
    expect(ofSesameItself('Sheep', true)).toBe('Sheep contain sesame')
    const touching = (name: string, plural: boolean) =>
      said('slaw', 'milk', 'keep-apart', called(name, plural))[0]
    expect(touching('Hummus', false)).toMatch(/^Hummus (shares|is|stands|goes) /)
    expect(touching('Almonds', true)).toMatch(/^Almonds (share|are|stand|go) /)
    // A document of before says nothing of it: one verb for all.
    expect(touching('Almonds', false)).toMatch(/^Almonds (shares|is|stands|goes) /)
    expect(rowFinding('Hummus', false, 'sesame', 'contact', 'Pita')).toBe('Hummus touches pita')
    expect(rowFinding('Almonds', true, 'almond', 'contains', null)).toBe('Almonds contain almond')
    expect(shortFinding(true, 'vegan', 'contains', null)).toBe('aren’t vegan')
  })

  test('[C44] in a pan it is a few words, and never safe or free of something', () => {
    expect(shortFinding(false, 'wheat', 'contains', null)).toBe('contains wheat')
    expect(shortFinding(false, 'vegan', 'contains', null)).toBe('isn’t vegan')
    expect(shortFinding(false, 'no-pork', 'contains', null)).toBe('contains pork')
    expect(shortFinding(false, 'soy', 'unknown', null)).toBe('soy: not known')
    expect(shortFinding(false, 'fish', 'contact', 'Tuna salad')).toBe('touches tuna salad')
    expect(shortFinding(false, 'fish', 'contact-unknown', null)).toBe('contact not known')
  })
})
