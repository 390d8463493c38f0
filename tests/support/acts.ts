/** A history as plain data: what was done, in order, so that it can be lived again. */
import type { Role } from '#lib/service/roles.ts'
import type { Given } from '#tests/support/service.ts'

export type Act =
  | { readonly do: 'command'; readonly command: Given; readonly by: Role }
  | { readonly do: 'pass'; readonly ms: number }
  | { readonly do: 'jump'; readonly byMs: number }
  | { readonly do: 'restart'; readonly awayMs: number; readonly byMs: number }
  | { readonly do: 'newDocument' }
  | { readonly do: 'advise' }
