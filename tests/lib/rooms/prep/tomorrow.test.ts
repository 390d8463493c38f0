import { describe, expect, it } from 'vitest'
import { firstEntry } from '#lib/rooms/prep/views/plan-entry.ts'
import { firstTasting } from '#lib/tasting/entry.ts'
import { demoStation } from '#tests/support/service.ts'

const station = { ...demoStation, timeZone: 'America/New_York' }

describe('tomorrow, on a night that an hour is put into or taken out of', () => {
  it.each([
    // Clocks are set back on 1 November 2026: that day is 25 hours long.
    ['half an hour into the long day', '2026-11-01T04:30:00Z', '2026-11-02'],
    // They are set forward on 14 March 2027: that day is 23 hours long.
    ['half an hour before the short day', '2027-03-14T04:30:00Z', '2027-03-14'],
    ['any noon', '2026-11-10T17:00:00Z', '2026-11-11'],
  ])('[PR62] %s', (_, now, tomorrow) => {
    expect(firstEntry(station, Date.parse(now)).on).toBe(tomorrow)
  })

  it('[PR62] a tasting too that comes too late for today’s classes', () => {
    const period = { id: 'p1', name: '1', from: '00:00', to: '00:15' }
    const day = { ...station.day, bells: [{ id: 'b', name: 'B', periods: [period] }] }
    const entry = firstTasting({ ...station, day }, Date.parse('2026-11-01T04:30:00Z'), ['rice'])
    expect(entry.on).toBe('2026-11-02')
  })
})
