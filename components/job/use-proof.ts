import { useState } from 'react'
import { keepHands, keptHands, useLapse } from '#components/job/kept-hands.ts'

/** Something that is typed to stand for what is done. */
export interface Proof {
  readonly text: string
  set(text: string): void
}

export interface Initials extends Proof {
  /** Once it was sent: kept for the next job, or typed anew where they sign a decision. */
  remember(): void
}

/** @param isSignature they sign a decision or a throwing out: nobody signs as the person before */
export const useInitials = (isSignature: boolean): Initials => {
  const [text, set] = useState(() => (isSignature ? '' : keptHands().initials))
  useLapse((gone) => {
    if (text === gone && !isSignature) set('')
  })
  return {
    text,
    set: (typed) => set(typed.toUpperCase()),
    remember: () => (isSignature ? set('') : keepHands({ initials: text })),
  }
}

/** The passphrase of the person in charge: on no device longer than it takes to send it. */
export const usePassphrase = (): Proof => {
  const [text, set] = useState('')
  return { text, set }
}
