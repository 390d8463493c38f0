/** What a tap at the counter can be. */

import type { LeftCommand } from '#lib/rooms/orders/views/order-answered.ts'
import type { BuildAt, Note, Ordering, ShortWay, Told } from '#lib/rooms/orders/views/ordering.ts'
import type { NeedCode, Reason } from '#lib/station/codes/codes.ts'

export type Act =
  | { readonly act: 'asked-none' }
  | { readonly act: 'need'; readonly code: NeedCode }
  | { readonly act: 'kind'; readonly group: NeedCode; readonly code: NeedCode }
  | { readonly act: 'handling'; readonly code: NeedCode }
  | { readonly act: 'reason'; readonly code: NeedCode; readonly reason: Reason }
  /** The next build is for a guest who was asked already. */
  | { readonly act: 'same-guest'; readonly index: number }
  | { readonly act: 'not-sure' }
  | { readonly act: 'ask-again' }
  /** `isSaid`: what is left out only though it is celiac disease is what the guest said. */
  | { readonly act: 'said-needs'; readonly isSaid?: true }
  | { readonly act: 'choose'; readonly item: string }
  | { readonly act: 'tap'; readonly component: string }
  | { readonly act: 'more'; readonly component: string }
  | { readonly act: 'another' }
  | { readonly act: 'go-to'; readonly index: number }
  | { readonly act: 'drop' }
  /** The build in sight was read back as it stands there. */
  | { readonly act: 'read-again' }
  /** The person in charge is called. */
  | { readonly act: 'in-charge' }
  /** The person in charge accepted the cautions of `food`, under this number. */
  | { readonly act: 'caution-accepted'; readonly caution: number; readonly food: string }
  /** The screen is turned to the guest of a build. */
  | { readonly act: 'turn'; readonly index: number }
  | { readonly act: 'agree' }
  | { readonly act: 'back' }
  | { readonly act: 'name'; readonly name: string }
  | { readonly act: 'paid' }
  | { readonly act: 'start-over' }
  | { readonly act: 'send'; readonly id: string }
  | { readonly act: 'next-guest' }
  /** `isLate`: it waited, and the screen said so. */
  | { readonly act: 'accepted'; readonly id: string; readonly isLate?: boolean }
  /** The guest of what waited was told. */
  | { readonly act: 'arrived-told'; readonly id: string }
  /** What an earlier load of the page left half typed. */
  | { readonly act: 'restored'; readonly ordering: Ordering }
  | { readonly act: 'refused'; readonly id: string; readonly note: Note }
  /** What an earlier load of the page, or another step, left waiting was accepted. */
  | { readonly act: 'left-accepted'; readonly id: string; readonly sent: LeftCommand }
  | {
      readonly act: 'came-back'
      readonly id: string
      readonly sent: LeftCommand
      readonly note: Note
    }
  | { readonly act: 'open-returned'; readonly id: string }
  | { readonly act: 'drop-returned'; readonly id: string }
  | { readonly act: 'tickets' }
  /** `way`: what it becomes where the pans can't fill it. */
  | ({ readonly act: 'change-build'; readonly way?: ShortWay } & BuildAt)
  /** A guest who has ordered tells a need. */
  | ({ readonly act: 'tell-need' } & BuildAt)
  /** It was told, and the build is stopped. */
  | ({ readonly act: 'need-told'; readonly told: Told } & BuildAt)
  /** It was answered whether another build of the ticket is for the same guest. */
  | { readonly act: 'other-answered'; readonly letter: string }
