/** What retention has to remember: its setting, which time is believed, and which closes were seen. */
import { type BelievedTime, FEWEST_DAYS, MOST_DAYS, USUAL_DAYS } from '#lib/access/believed-time.ts'
import type { SqliteDatabase } from '#server/store/durable-database.ts'

interface Remembered {
  readonly days: number
  readonly time: BelievedTime
  /** By service: what was believed when its close was seen, epoch milliseconds. */
  readonly closes: Readonly<Record<string, number>>
}

export interface RetentionStore {
  /** Days after the close for which a stream is kept. */
  days(): number
  /** @throws {RangeError} a number of days that can't be set */
  setDays(days: number): void
  time(): BelievedTime | null
  setTime(time: BelievedTime): void
  closes(): Remembered['closes']
  setCloses(closes: Remembered['closes']): void
}

export const isNumberOfDays = (days: number): boolean =>
  Number.isInteger(days) && days >= FEWEST_DAYS && days <= MOST_DAYS

/** In the house's file. Only this server writes it, so it is read as it was put. */
export const createSqliteRetention = (house: SqliteDatabase): RetentionStore => {
  const get = house.prepare<[string], string>('SELECT body FROM retention WHERE key = ?').pluck()
  const put = house.prepare<[string, string]>(
    'INSERT INTO retention (key, body) VALUES (?, ?) ON CONFLICT (key) DO UPDATE SET body = excluded.body',
  )
  const read = <Key extends keyof Remembered>(key: Key): Remembered[Key] | null => {
    const body = get.get(key)
    return body === undefined ? null : JSON.parse(body)
  }
  const write = <Key extends keyof Remembered>(key: Key, value: Remembered[Key]): void => {
    put.run(key, JSON.stringify(value))
  }
  return {
    days: () => read('days') ?? USUAL_DAYS,
    setDays: (days) => {
      if (!isNumberOfDays(days)) throw new RangeError(`${days} days of retention`)
      write('days', days)
    },
    time: () => read('time'),
    setTime: (time) => write('time', time),
    closes: () => read('closes') ?? {},
    setCloses: (closes) => write('closes', closes),
  }
}
