import type { ReactNode } from 'react'
import styles from '#components/line/wrap.module.css'

/** `open` is being made, `missing` isn't there yet. */
export type WrapState = 'closed' | 'open' | 'missing'

/** A wrapped parcel as it lies there: its fold at the top, and what is written on it. */
export function Wrap({
  is,
  isChosen = false,
  className,
  children,
}: {
  readonly is: WrapState
  readonly isChosen?: boolean
  readonly className?: string | undefined
  readonly children: ReactNode
}) {
  return (
    <span
      className={className ? `${styles.wrap} ${className}` : styles.wrap}
      data-is={is}
      data-chosen={isChosen || undefined}
    >
      <span className={styles.fold} aria-hidden="true" />
      <span className={styles.on}>{children}</span>
    </span>
  )
}

/** A build's number on its wrap: three figures leave less room to the letter. */
export function WrapNumber({ said }: { readonly said: string }) {
  const [, number = said, letter = ''] = /^(\d+)(\D.*)$/.exec(said) ?? []
  return (
    <span className={styles.number} data-figures={number.length}>
      {number}
      <span>{letter}</span>
    </span>
  )
}
