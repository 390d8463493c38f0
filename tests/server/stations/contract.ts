import { describe, expect, it } from 'vitest'
import type { ParseDocument, Stations } from '#server/stations/port.ts'

export interface Sign {
  readonly sign: string
}

export const parseSign: ParseDocument<Sign> = (json) => {
  if (
    typeof json === 'object' &&
    json !== null &&
    'sign' in json &&
    typeof json.sign === 'string'
  ) {
    return { sign: json.sign }
  }
  throw new TypeError('Not a sign')
}

/** What every store of station documents does. `open` gives a new, empty one. */
export const registerStationsContract = (
  kind: string,
  open: (parse: ParseDocument<Sign>) => Stations<Sign>,
): void => {
  describe(`the ${kind} stations`, () => {
    it('[L23] each putting is a new revision of its station, 1, 2, 3', async () => {
      const stations = open(parseSign)
      expect(await stations.put('grill', { sign: 'Grill' })).toBe(1)
      expect(await stations.put('bowls', { sign: 'Bowls' })).toBe(1)
      expect(await stations.put('grill', { sign: 'The "Grill" ½' })).toBe(2)
      expect(await stations.put('grill', { sign: 'The "Grill" ½' })).toBe(3)
      expect(await stations.latest('bowls')).toEqual({
        station: 'bowls',
        revision: 1,
        document: { sign: 'Bowls' },
      })
      expect(await stations.latest('grill')).toEqual({
        station: 'grill',
        revision: 3,
        document: { sign: 'The "Grill" ½' },
      })
      expect(await stations.latest('salads')).toBeNull()
    })

    it('[L23] the list has the newest of each, first kept first', async () => {
      const stations = open(parseSign)
      expect(await stations.list()).toEqual([])
      await stations.put('grill', { sign: 'Grill' })
      await stations.put('bowls', { sign: 'Bowls' })
      await stations.put('grill', { sign: 'Grill again' })
      expect(await stations.list()).toEqual([
        { station: 'grill', revision: 2, document: { sign: 'Grill again' } },
        { station: 'bowls', revision: 1, document: { sign: 'Bowls' } },
      ])
    })

    it('[L23] a document that no longer parses is told, not handed out', async () => {
      let known = true
      const stations = open((json) => {
        if (!known) throw new TypeError('Not a sign any more')
        return parseSign(json)
      })
      await stations.put('grill', { sign: 'Grill' })
      known = false
      await expect(stations.latest('grill')).rejects.toThrow('Not a sign any more')
      await expect(stations.list()).rejects.toThrow('Not a sign any more')
    })
  })
}
