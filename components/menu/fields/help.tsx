'use client'

import { type ReactNode, useState } from 'react'
import styles from '#components/menu/fields/help.module.css'
import { type MenuWords, useMenuWords } from '#components/menu/words.tsx'

export type HelpOf = keyof MenuWords['help']

const isHelp = (words: MenuWords, of: string | undefined): of is HelpOf =>
  of !== undefined && of in words.help

/** What a part of a form is for is said where whoever is in it looks. */
export function About({ of, children }: { readonly of: HelpOf; readonly children: ReactNode }) {
  return (
    <div className={styles.about} data-help={of}>
      {children}
    </div>
  )
}

/** A panel whose foot says in one sentence what the field is for that the hand is in. */
export function Helped({
  acts,
  children,
}: {
  /** Buttons that stand beside the sentence. */
  readonly acts?: ReactNode
  readonly children: ReactNode
}) {
  const words = useMenuWords()
  const [of, setOf] = useState<HelpOf | null>(null)
  const meant = (target: EventTarget): void => {
    const said = (target as Element).closest<HTMLElement>('[data-help]')?.dataset.help
    if (isHelp(words, said)) setOf(said)
  }
  return (
    <>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: it listens to what is in it, and does nothing by itself */}
      <div
        className={styles.helped}
        onFocus={({ target }) => meant(target)}
        onPointerDown={({ target }) => meant(target)}
      >
        {children}
        <footer className={styles.foot}>
          <p>{of === null ? words.screen.helpHere : words.help[of]}</p>
          {acts}
        </footer>
      </div>
    </>
  )
}
