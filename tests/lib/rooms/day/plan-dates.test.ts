import { describe, expect, it } from 'vitest'
import { createDrive } from '#tests/support/drive-history.ts'
import { read } from '#tests/support/food.ts'
import { OPEN_PLANNED, PLAN } from '#tests/support/plans.ts'
import { demoStation, type Given, OPENED_AT } from '#tests/support/service.ts'

const HOUR = 3_600_000
const SLAW: Given = { type: 'startBatch', batch: 'b1', component: 'slaw', loads: 1 }

const chills = (degrees: number) =>
  ({ type: 'recordCooling', batch: 'b1', ...read(degrees) }) as const

/** Chicago, whose clocks are set forward on March 14 and back on November 7, 2027. */
const DAYS = [
  // Day 1 is the day of making; seven days at 41 °F (3-501.17(A)), and midnight is the station's.
  [
    'forward',
    '2027-03-13T22:00Z',
    '2027-03-13',
    '2027-03-14',
    '2027-03-14T15:30Z',
    '2027-03-20T05:00Z',
  ],
  [
    'back',
    '2027-11-06T21:00Z',
    '2027-11-06',
    '2027-11-07',
    '2027-11-07T16:30Z',
    '2027-11-13T06:00Z',
  ],
] as const

describe('what is prepared the day before', () => {
  it('[PL11] is read once a day while it stands cold, and as ever once it was read in its service', () => {
    const drive = createDrive(demoStation)
    const gives = (command: Given) =>
      expect(drive.take(command, 'lead').refusal, command.type).toBeNull()
    const offSale = () => drive.state().batches.b1?.offSale?.why ?? null
    gives({ ...PLAN, on: '2026-11-27', crew: [] })
    gives(SLAW)
    gives({ type: 'finishBatch', batch: 'b1', amount: 4_000_000, preparedOn: '2026-11-25' })
    gives({ ...chills(60), presentUntil: OPENED_AT + 4 * HOUR })
    drive.pass(HOUR)
    gives(chills(40))
    drive.pass(23 * HOUR)
    expect(offSale()).toBeNull()
    drive.pass(2 * HOUR)
    expect(offSale()).toBe('reading-missed')
    // A day and an hour are too long to say how it was meanwhile.
    gives({ type: 'readTemperature', what: 'batch', id: 'b1', ...read(38) })
    expect(offSale()).toBe('reading-missed')
  })

  it.each(DAYS)(
    '[PL4] is loaded on the next, over the night on which clocks are set %s, with its date',
    (_, evening, made, on, morning, ends) => {
      const drive = createDrive(demoStation)
      const gives = (command: Given) =>
        expect(drive.take(command, 'lead').refusal, command.type).toBeNull()
      drive.pass(Date.parse(evening) - OPENED_AT)
      gives({ ...PLAN, on, crew: [] })
      gives(SLAW)
      gives({ type: 'finishBatch', batch: 'b1', amount: 4_000_000, preparedOn: made })
      gives({ ...chills(60), presentUntil: Date.parse(evening) + 4 * HOUR })
      drive.pass(HOUR)
      gives(chills(40))
      const mark = drive.state().batches.b1?.dateMark
      expect(mark?.endsAt).toBe(Date.parse(ends))
      drive.pass(Date.parse(morning) - Date.parse(evening) - HOUR)
      // Nobody read it over the night, and nobody had to.
      expect(drive.state().batches.b1?.offSale).toBeNull()
      gives(OPEN_PLANNED)
      gives({
        type: 'load',
        pan: 'pan-slaw',
        amount: 1_000_000,
        batch: 'b1',
        ...read(38),
      })
      expect(drive.state().pans['pan-slaw']?.food?.dateMark).toEqual(mark)
    },
  )

  it('[PL7] is to be thrown out once its date is over, though nobody opened the service', () => {
    const drive = createDrive(demoStation)
    drive.take({ ...PLAN, crew: [] }, 'lead')
    drive.take(SLAW, 'lead')
    drive.take(
      { type: 'finishBatch', batch: 'b1', amount: 4_000_000, preparedOn: '2026-11-25' },
      'lead',
    )
    // The laptop is off for ten days.
    const fallen = drive.restart(10 * 86_400_000, 0).flatMap(({ recorded }) => recorded)
    expect(fallen).toContainEqual(
      expect.objectContaining({ type: 'throwOutPassed', id: 'b1', because: 'date' }),
    )
    expect(drive.take({ type: 'dropPlan' }, 'lead').refusal).toMatchObject({
      code: 'throw-out-first',
    })
  })
})
