import type { KeptRow } from '#lib/access/kept.ts'
import type { KeptNow } from '#lib/access/kept-http.ts'
import type { Houses } from '#server/houses/houses.ts'
import type { Keeping } from '#server/privacy/keeping.ts'

const isOfServices = ({ where }: KeptRow): boolean =>
  'file' in where && (where.file === 'guests.db' || where.file === 'log.db')

const both = (one: KeptNow, other: KeptNow): KeptNow => {
  const times = [one.oldest, other.oldest].filter((time) => time !== null)
  return {
    count: one.count + other.count,
    oldest: times.length === 0 ? null : Math.min(...times),
  }
}

/** What is asked of keeping over http: of the own house, but what names a service of the demo, of the demo. */
export const keepingOfBoth = (
  houses: Houses,
): Pick<Keeping, 'now' | 'setDays' | 'forget' | 'reasonsOf'> => {
  const of = async (service: string): Promise<Keeping> => {
    const demo = houses.demo()
    const isOwn = demo === null || (await houses.own.events.head(service)) > 0
    return isOwn ? houses.own.keeping : demo.keeping
  }
  return {
    now: async () => {
      const own = await houses.own.keeping.now()
      const there = (await houses.demo()?.keeping.now())?.rows ?? []
      return {
        ...own,
        rows: own.rows.map((row) => {
          if (row.id === 'demo')
            return { ...row, now: { count: there.length > 0 ? 1 : 0, oldest: null } }
          const also = isOfServices(row) ? there.find(({ id }) => id === row.id)?.now : null
          return { ...row, now: row.now && also ? both(row.now, also) : row.now }
        }),
      }
    },
    setDays: async (days) => {
      for (const [, { keeping }] of houses.all()) await keeping.setDays(days)
    },
    forget: async (service, ticket) => (await of(service)).forget(service, ticket),
    reasonsOf: async (service, ticket) => (await of(service)).reasonsOf(service, ticket),
  }
}
