import { describe, expect, it, onTestFinished } from 'vitest'
import type { Guests } from '#server/guests/port.ts'

/** What every store of names does. `open` gives a new, empty one. */
export const registerGuestsContract = (kind: string, open: () => Guests): void => {
  const opened = (): Guests => {
    const guests = open()
    onTestFinished(() => guests.close())
    return guests
  }

  describe(`the ${kind} names`, () => {
    it('[L20] names are found by the command that brought them, in each service for itself', async () => {
      const guests = opened()
      await guests.put('lunch', 'c2', 'Ida')
      await guests.put('lunch', 'c1', 'Ömer "Oz"')
      await guests.put('supper', 'c1', 'Mai')
      expect(await guests.namesOf('lunch')).toEqual({ c1: 'Ömer "Oz"', c2: 'Ida' })
      expect(await guests.namesOf('supper')).toEqual({ c1: 'Mai' })
      expect(await guests.namesOf('breakfast')).toEqual({})
      expect(await guests.services()).toEqual(['lunch', 'supper'])
    })

    it('[L20] a command id that is a word of the language is an id like any other', async () => {
      const guests = opened()
      await guests.put('lunch', '__proto__', 'Ida')
      await guests.put('lunch', 'constructor', 'Mai')
      const names = await guests.namesOf('lunch')
      expect(Object.entries(names).sort()).toEqual([
        ['__proto__', 'Ida'],
        ['constructor', 'Mai'],
      ])
    })

    it('[L20] the first name of a command stays when it is sent again', async () => {
      const guests = opened()
      await guests.put('lunch', 'c1', 'Ida')
      await guests.put('lunch', 'c1', 'Someone else')
      expect(await guests.namesOf('lunch')).toEqual({ c1: 'Ida' })
    })

    it('[L21] a sweep removes the names that no command kept, and no other', async () => {
      const guests = opened()
      await guests.put('lunch', 'kept', 'Ida')
      await guests.put('lunch', 'orphan', 'Mai')
      await guests.put('supper', 'orphan', 'Jo')
      expect(await guests.sweep('lunch', new Set(['kept', 'without a name']))).toBe(1)
      expect(await guests.namesOf('lunch')).toEqual({ kept: 'Ida' })
      expect(await guests.namesOf('supper')).toEqual({ orphan: 'Jo' })
      expect(await guests.sweep('lunch', new Set(['kept']))).toBe(0)
      expect(await guests.sweep('lunch', new Set())).toBe(1)
      expect(await guests.services()).toEqual(['supper'])
    })

    it('[L22] forgetting a service leaves the others', async () => {
      const guests = opened()
      await guests.put('lunch', 'c1', 'Ida')
      await guests.put('supper', 'c1', 'Mai')
      await guests.forget('lunch')
      await guests.forget('never opened')
      expect(await guests.namesOf('lunch')).toEqual({})
      expect(await guests.namesOf('supper')).toEqual({ c1: 'Mai' })
      expect(await guests.services()).toEqual(['supper'])
    })
  })
}
