import type { HTMLAttributes, ReactNode } from 'react'
import styles from '#components/ui/note.module.css'

interface NoteProps extends HTMLAttributes<HTMLParagraphElement> {
  /** `watch` is to be looked at, `no` stops, `care` is a need kept apart, `done` has happened. */
  readonly kind?: 'plain' | 'watch' | 'no' | 'care' | 'done'
  readonly children: ReactNode
}

/** A sentence that people must see beside what they do; its words say which kind it is. */
export function Note({ kind = 'plain', children, ...rest }: NoteProps) {
  return (
    <p {...rest} className={styles.note} data-kind={kind}>
      {children}
    </p>
  )
}
