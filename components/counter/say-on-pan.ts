import type { CounterWords } from '#components/counter/words.tsx'
import type { Finding } from '#lib/needs/judge.ts'

/** Why a pan isn't for a guest, in the one word that has room on it, while asking and choosing. */
export const sayOnPan = ({ over: words }: CounterWords, { need, why }: Finding): string => {
  switch (why) {
    case 'contains':
      return words.contains(need)
    case 'may-contain':
      return words.mayContain(need)
    case 'not-listed':
    case 'unknown':
      return words.unknown(need)
    case 'contact':
    case 'soiled':
      return words.touches
    case 'contact-unknown':
      return words.touchesUnknown
  }
}
