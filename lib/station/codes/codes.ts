import { isDietCode } from '#lib/station/codes/diets.ts'

/**
 * What a guest keeps away from: an allergen of the station's set or a kind of one, gluten or a
 * grain, an allergen of the station's own, a diet, or a claim such as halal.
 */
export type NeedCode = string

/** How a need is handled: `keep-apart` counts shared contact, `leave-out` does not. */
export type Handling = 'keep-apart' | 'leave-out'

export const REASONS = ['allergy', 'coeliac', 'faith', 'diet', 'dislike'] as const
export type Reason = (typeof REASONS)[number]

export interface Need {
  readonly code: NeedCode
  readonly handling: Handling
  readonly reason: Reason | null
}

/** What the guest answered when asked. `not-sure` counts as unknown. */
export type Asked = 'none' | 'needs' | 'not-sure'

/** Diets and claims are said as what the guest eats, allergens as what they keep away from. */
export const isDiet = (code: NeedCode): boolean => isDietCode(code)

/** One tap on an allergen or on gluten is keep apart; diets and claims are left out. */
export const usualHandling = (code: NeedCode): Handling =>
  isDietCode(code) ? 'leave-out' : 'keep-apart'
