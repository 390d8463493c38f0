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
      await guests.put('lunch', 'c2', [{ kind: 'name', body: 'Ida' }])
      await guests.put('lunch', 'c1', [{ kind: 'name', body: 'Ömer "Oz"' }])
      await guests.put('supper', 'c1', [{ kind: 'name', body: 'Mai' }])
      expect(await guests.of('lunch', 'name')).toEqual({ c1: 'Ömer "Oz"', c2: 'Ida' })
      expect(await guests.of('supper', 'name')).toEqual({ c1: 'Mai' })
      expect(await guests.of('breakfast', 'name')).toEqual({})
      expect(await guests.services()).toEqual(['lunch', 'supper'])
    })

    it('[L20] a command id that is a word of the language is an id like any other', async () => {
      const guests = opened()
      await guests.put('lunch', '__proto__', [{ kind: 'name', body: 'Ida' }])
      await guests.put('lunch', 'constructor', [{ kind: 'name', body: 'Mai' }])
      const names = await guests.of('lunch', 'name')
      expect(Object.entries(names).sort()).toEqual([
        ['__proto__', 'Ida'],
        ['constructor', 'Mai'],
      ])
    })

    it('[L20] the first name of a command stays when it is sent again', async () => {
      const guests = opened()
      await guests.put('lunch', 'c1', [{ kind: 'name', body: 'Ida' }])
      await guests.put('lunch', 'c1', [{ kind: 'name', body: 'Someone else' }])
      expect(await guests.of('lunch', 'name')).toEqual({ c1: 'Ida' })
    })

    it('[L21] a sweep removes the names that no command kept, and no other', async () => {
      const guests = opened()
      await guests.put('lunch', 'kept', [{ kind: 'name', body: 'Ida' }])
      await guests.put('lunch', 'orphan', [{ kind: 'name', body: 'Mai' }])
      await guests.put('supper', 'orphan', [{ kind: 'name', body: 'Jo' }])
      expect(await guests.sweep('lunch', new Set(['kept', 'without a name']))).toBe(1)
      expect(await guests.of('lunch', 'name')).toEqual({ kept: 'Ida' })
      expect(await guests.of('supper', 'name')).toEqual({ orphan: 'Jo' })
      expect(await guests.sweep('lunch', new Set(['kept']))).toBe(0)
      expect(await guests.sweep('lunch', new Set())).toBe(1)
      expect(await guests.services()).toEqual(['supper'])
    })

    it('[L22] forgetting a service leaves the others', async () => {
      const guests = opened()
      await guests.put('lunch', 'c1', [{ kind: 'name', body: 'Ida' }])
      await guests.put('supper', 'c1', [{ kind: 'name', body: 'Mai' }])
      await guests.forget('lunch', ['name'])
      await guests.forget('never opened', ['name'])
      expect(await guests.of('lunch', 'name')).toEqual({})
      expect(await guests.of('supper', 'name')).toEqual({ c1: 'Mai' })
      expect(await guests.services()).toEqual(['supper'])
    })

    it('[L20] each kind lies for itself, and is counted', async () => {
      const guests = opened()
      await guests.put('lunch', 'c1', [
        { kind: 'name', body: 'Ida' },
        { kind: 'reasons', body: '[]' },
      ])
      await guests.put('lunch', 'c2', [{ kind: 'initials', body: 'KT' }])
      await guests.put('lunch', 'c1', [{ kind: 'text', body: 'by the window' }])
      expect(await guests.of('lunch', 'name')).toEqual({ c1: 'Ida' })
      expect(await guests.of('lunch', 'initials')).toEqual({ c2: 'KT' })
      expect(await guests.of('lunch', 'text')).toEqual({ c1: 'by the window' })
      expect((await guests.counts()).map((one) => `${one.kind} ${one.count}`)).toEqual([
        'initials 1',
        'name 1',
        'reasons 1',
        'text 1',
      ])
    })

    it('[L22] forgetting kinds of some commands leaves other kinds and commands', async () => {
      const guests = opened()
      for (const command of ['c1', 'c2'])
        await guests.put('lunch', command, [
          { kind: 'name', body: 'Ida' },
          { kind: 'initials', body: 'KT' },
        ])
      expect(await guests.forget('lunch', ['name', 'reasons'], ['c1', 'c9'])).toBe(1)
      expect(await guests.of('lunch', 'name')).toEqual({ c2: 'Ida' })
      expect(await guests.of('lunch', 'initials')).toEqual({ c1: 'KT', c2: 'KT' })
      expect(await guests.forget('lunch', ['name'])).toBe(1)
      expect(await guests.of('lunch', 'name')).toEqual({})
    })
  })
}
