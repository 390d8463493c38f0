import type { FindingTold } from '#lib/needs/finding-told.ts'
import type { Why } from '#lib/needs/judge.ts'
import type { NeedCode } from '#lib/station/codes/codes.ts'

/** One thing that is said to the guest before sending. Ids are components; cents are whole. */
export type Statement =
  | {
      readonly say: 'item'
      readonly item: string
      readonly base: string | null
      /** Nothing else is said of the food. */
      readonly asItComes: boolean
    }
  /** Several fit equally, and the guest is asked which. */
  | { readonly say: 'which-base'; readonly bases: readonly string[] }
  | {
      readonly say: 'other-base'
      readonly wanted: string
      readonly why: 'gone' | 'not-selling' | 'kept'
    }
  | { readonly say: 'not-this-base'; readonly wanted: string; readonly because: FindingTold }
  | { readonly say: 'no-asked'; readonly components: readonly string[] }
  | { readonly say: 'out'; readonly components: readonly string[] }
  | { readonly say: 'not-selling'; readonly components: readonly string[] }
  | {
      readonly say: 'need'
      readonly components: readonly string[]
      readonly need: NeedCode
      readonly why: Why
      /** What it touches, where that is why. */
      readonly touches: string | null
    }
  | { readonly say: 'added'; readonly components: readonly string[] }
  | { readonly say: 'in-it'; readonly components: readonly string[] }
  | { readonly say: 'side'; readonly components: readonly string[] }
  | {
      readonly say: 'portions'
      readonly component: string
      readonly portions: number
      readonly moreCents: number
    }
  | { readonly say: 'fewer'; readonly component: string; readonly portions: number }
  | { readonly say: 'backup'; readonly components: readonly string[] }
  /** What has to be accepted with the person in charge. */
  | { readonly say: 'caution'; readonly told: FindingTold }
  | { readonly say: 'accepted' }
  | { readonly say: 'keep-apart'; readonly codes: readonly NeedCode[] }
  /** Left out only, and something that touches or may contain it is taken. */
  | { readonly say: 'noted'; readonly codes: readonly NeedCode[] }
  /** No label of what is taken lists it. */
  | { readonly say: 'not-listed'; readonly codes: readonly NeedCode[] }
  /** Left out only, though it is celiac disease: that is what the guest said. */
  | { readonly say: 'as-told'; readonly codes: readonly NeedCode[] }
  | { readonly say: 'kept'; readonly component: string; readonly for: readonly string[] }
  | { readonly say: 'price'; readonly cents: number }

/** What is read back of a build, as it stands: one that differs has to be said again. */
export interface Reading {
  /** All of it as one text: the sentence, and what it depends on. */
  readonly key: string
  readonly statements: readonly Statement[]
  /** `saidOf` its choice: the server compares them when the order arrives. */
  readonly said: readonly string[]
}
