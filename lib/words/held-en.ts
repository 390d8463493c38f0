/** Why a build may not go on, in English: on assembly, at hand-over, wherever it stands. */
import { isDiet, type Need, type NeedCode } from '#lib/needs/codes.ts'
import type { CautionReason } from '#lib/service/event.ts'
import type { WhyHeld } from '#lib/views/held.ts'
import { needName } from '#lib/words/service-en.ts'

export const loudNeed = (code: NeedCode): string => needName(code).toUpperCase()

/** "MILK: keep apart", "EGG: leave out"; a diet is what the food is: "VEGAN, kept apart", "VEGAN". */
export const sayNeed = ({ code, handling }: Pick<Need, 'code' | 'handling'>): string => {
  const need = loudNeed(code)
  if (isDiet(code)) return handling === 'keep-apart' ? `${need}, kept apart` : need
  return handling === 'keep-apart' ? `${need}: keep apart` : `${need}: leave out`
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
        : why.scoops
            .map(({ pan, by }) => `A wrong scoop went into ${pan}: the one of ${by}.`)
            .join(' ')
  }
}

/** What the person in charge looked at before accepting a caution with the guest. */
export const cautionReason: Readonly<Record<CautionReason, string>> = {
  'guest-accepts': 'the guest knows it and accepts it',
  'label-read': 'the label was read again',
  'supplier-asked': 'the supplier was asked',
  'recipe-checked': 'the recipe was checked',
}
