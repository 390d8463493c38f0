import { describe, expect, it } from 'vitest'
import { AWAY, each, type Fields, kept, list, toldOf } from '#lib/access/seen/classed.ts'
import { CREW, FIELD_CLASSES, isSent } from '#lib/access/seen/classes.ts'
import { EVENTS } from '#lib/access/seen/event-fields.ts'
import { FORECAST } from '#lib/access/seen/forecast-fields.ts'
import { STATE } from '#lib/access/seen/state-fields.ts'
import { canariesOf } from '#tests/support/canaries.ts'

interface Guest {
  readonly name: string | null
  readonly price: number
  readonly gone?: true
  readonly needs: readonly { readonly code: string }[]
  readonly by: Readonly<Record<string, number>>
  readonly was: { readonly is: 'one'; readonly at: number } | { readonly is: 'two' } | null
}

const NEEDS = list({ code: 'needs' } as const)
const WAS = { is: 'always', at: 'always' } as const
const COMMON = { name: ['name', null], price: ['money', 0], by: each('always') } as const

describe('how fields are classed', () => {
  it('[V1] a type whose every field is classed is, however deep', () => {
    const whole: Fields<Guest> = { ...COMMON, gone: ['adult', AWAY], needs: NEEDS, was: kept(WAS) }
    expect(canariesOf(whole).map(({ path }) => path)).toEqual([
      'name',
      'price',
      'by.*',
      'gone',
      'needs.*.code',
      'was.is',
      'was.at',
    ])
  })

  it('[V1] what lacks a class, says the wrong one, or nothing for its place, doesn’t compile', () => {
    // @ts-expect-error a field isn't classed
    const lacking: Fields<Guest> = { ...COMMON, needs: NEEDS, was: WAS }
    // @ts-expect-error a field of a list's values isn't classed
    const inside: Fields<Guest> = { ...COMMON, gone: 'always', needs: list({}), was: WAS }
    // @ts-expect-error a field of one member of a union isn't classed
    const member: Fields<Guest> = { ...COMMON, gone: 'always', needs: NEEDS, was: { is: 'always' } }
    // @ts-expect-error nothing stands in its place
    const bare: Fields<Guest> = { ...COMMON, name: 'name', gone: 'always', needs: NEEDS, was: WAS }
    const other: Fields<Guest> = {
      ...COMMON,
      // @ts-expect-error what stands in its place is of another type
      price: ['money', null],
      gone: 'always',
      needs: NEEDS,
      was: WAS,
    }
    const away: Fields<Guest> = {
      ...COMMON,
      // @ts-expect-error it can't be left away
      name: ['name', AWAY],
      gone: 'always',
      needs: NEEDS,
      was: WAS,
    }
    // @ts-expect-error an event isn't classed
    const { ticketPaid: _, ...fewer }: typeof EVENTS = { ...EVENTS, ticketPaid: undefined }
    expect([lacking, inside, member, bare, other, away, fewer]).toHaveLength(7)
    expect(() => toldOf('secret')).toThrow('isn’t classed')
    expect(() => toldOf(undefined)).toThrow('isn’t classed')
  })

  it('[V1] every class is some field’s, and sent to somebody or to nobody as it is said', () => {
    const all = [EVENTS, STATE, FORECAST].flatMap((one) => canariesOf(one))
    const used = new Set(all.map(({ fieldClass }) => fieldClass))
    const theirs = FIELD_CLASSES.filter((one) => CREW.some((role) => isSent(role, one)))
    expect(FIELD_CLASSES.filter((one) => !used.has(one) && one !== 'adult')).toEqual([])
    expect(FIELD_CLASSES.filter((one) => !theirs.includes(one))).toEqual([
      'initials',
      'reason',
      'pack',
    ])
  })
})
