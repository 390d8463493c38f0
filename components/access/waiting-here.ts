import { openBrowserOutbox } from '#components/live/browser-outbox.ts'
import { ROLES, type Role } from '#lib/service/roles.ts'

export interface Waiting {
  readonly role: Role
  readonly count: number
}

/** What this device still has to send, by the role whose screen sends it. */
export const waitingHere = async (): Promise<readonly Waiting[]> => {
  const all = await Promise.all(
    ROLES.map(async (role) => ({
      role,
      count: (
        await openBrowserOutbox(role)
          .all()
          .catch(() => [])
      ).length,
    })),
  )
  return all.filter(({ count }) => count > 0)
}
