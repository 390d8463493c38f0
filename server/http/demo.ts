/** Opening the demo beside the own stations, and closing it: by who leads the house, or at the laptop itself. */
import { z } from 'zod'
import { mayActAs } from '#lib/access/roles-granted.ts'
import type { Access } from '#server/access/access.ts'
import { type AccessRoute, takes } from '#server/http/access.ts'
import { isFromHere } from '#server/http/peer.ts'

const BODY = z.strictObject({ open: z.boolean() })

/** Settles when it is so. */
export type SetDemoOpen = (open: boolean) => Promise<void>

export const demoRoutes = (
  access: Pick<Access, 'deviceOf'>,
  setOpen: SetDemoOpen,
): readonly AccessRoute[] => [
  takes('/access/demo', null, BODY, async ({ open }, request) => {
    const device = access.deviceOf(request)
    const isAtLaptop = device === null && isFromHere(request)
    if (device === null && !isAtLaptop) return { code: 'not-joined' }
    if (device !== null && !mayActAs(device.role, 'lead')) return { code: 'not-yours' }
    await setOpen(open)
    return { code: 'done' }
  }),
]
