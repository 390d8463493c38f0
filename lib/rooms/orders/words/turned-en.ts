/** The screen that is turned to the guest, in English: short, beside drawn signs. */
import { type Handling, isDiet, type NeedCode } from '#lib/station/codes/codes.ts'
import { needName } from '#lib/words/service-en.ts'

export const turnedEn = {
  title: 'Please read this',
  needs: 'You told us',
  need: (code: NeedCode, handling: Handling): string => {
    if (isDiet(code))
      return handling === 'keep-apart' ? `${needName(code)}, kept apart` : needName(code)
    return handling === 'keep-apart' ? `keep apart from ${needName(code)}` : `no ${needName(code)}`
  },
  none: 'no allergies, no diet',
  food: (item: string) => `Your ${item}`,
  has: 'It has',
  without: 'No',
  onTheSide: (name: string) => `${name}, on the side`,
  portions: (name: string, count: number) => `${name}, ${count} portions`,
  cautions: 'You should know',
  accepted: 'Accepted with you by the person in charge.',
  shared: 'It is made on a shared line. We take care, but can’t promise that none gets in.',
  agree: 'I agree',
  notRight: 'Not right',
  back: 'Back to the counter',
  across: 'The guest reads this from the other side of the counter.',
} as const
