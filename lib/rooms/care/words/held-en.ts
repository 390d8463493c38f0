/** Why a build may not go on, in English: on assembly, at hand-over, wherever it stands. */

import type { WhyHeld, WrongScoop } from '#lib/rooms/care/facts/held.ts'
import type { CautionReason } from '#lib/service/events/caution-reasons.ts'
import { isDiet, type Need, type NeedCode } from '#lib/station/codes/codes.ts'
import { formOf, list } from '#lib/words/counted-en.ts'
import { inSentence } from '#lib/words/findings-en.ts'
import { needName } from '#lib/words/service-en.ts'

export const loudNeed = (code: NeedCode): string => needName(code).toUpperCase()

/** "MILK: keep apart", "EGG: leave out"; a diet is what the food is: "VEGAN, kept apart", "VEGAN". */
export const sayNeed = ({ code, handling }: Pick<Need, 'code' | 'handling'>): string => {
  const need = loudNeed(code)
  if (isDiet(code)) return handling === 'keep-apart' ? `${need}, kept apart` : need
  return handling === 'keep-apart' ? `${need}: keep apart` : `${need}: leave out`
}

const sayWrongScoop = ({ pan, by, lent, over }: WrongScoop): string => {
  if (lent) return `The scoop of ${by} stood in for the one of ${pan}.`
  const went = `A wrong scoop went into ${pan}: the one of ${by}.`
  if (over === null) return went
  if (over.component === null) return `${went} It can reach this one.`
  return over.touches
    ? `${went} ${over.component} ${over.isPlural ? 'touch' : 'touches'} ${inSentence(pan)}.`
    : `${went} ${over.component} can be reached by it.`
}

export const sayWhyHeld = (why: WhyHeld): string => {
  switch (why.reason) {
    case 'need':
      if (why.asked === 'not-sure') return 'The guest isn’t sure what they can eat.'
      return why.needs.length === 0
        ? 'The guest told us something new.'
        : `The guest just told us: ${why.needs.map(sayNeed).join(' · ')}`
    case 'label':
      return why.ingredients.length === 0
        ? 'A label changed.'
        : `A label changed: ${why.ingredients.join(', ')}`
    case 'contact':
      return why.scoops.length === 0
        ? 'Its back-up pan isn’t ready any more.'
        : why.scoops.map(sayWrongScoop).join(' ')
    case 'off-sale':
      if (why.shelf && why.components.length === 0)
        return 'The shelf it is on is out of its limits.'
      return why.components.length === 0
        ? 'What it took is out of its limits: don’t serve it.'
        : `${list(why.components, 'and')}: out of ${formOf(why.components.length, 'its', 'their')} limits, don’t serve.`
  }
}

/** What the person in charge looked at before accepting a caution with the guest. */
export const cautionReason: Readonly<Record<CautionReason, string>> = {
  'guest-accepts': 'the guest knows it and accepts it',
  'label-read': 'the label was read again',
  'supplier-asked': 'the supplier was asked',
  'recipe-checked': 'the recipe was checked',
}
