/** Needs of an order of which somebody has yet to ask whether they are as the guest said. */

import { leftOutThough } from '#lib/rooms/care/facts/left-out-though.ts'
import type { Draft } from '#lib/rooms/orders/facts/draft.ts'
import type { NeedCode } from '#lib/station/codes/codes.ts'

/** Those left out though celiac disease is the reason, that nobody has asked about. */
export const toAskOf = ({ needs, asSaid = [] }: Draft): readonly NeedCode[] =>
  leftOutThough(needs).filter((code) => !asSaid.includes(code))
