import type { ButtonHTMLAttributes, ReactNode } from 'react'
import styles from '#components/ui/button.module.css'

export interface ButtonProps extends ButtonHTMLAttributes<HTMLButtonElement> {
  /** `main` is what is done next, one a screen; `no` ends or throws out; `care` is a need's. */
  readonly kind?: 'main' | 'plain' | 'quiet' | 'no' | 'care'
  readonly size?: 'plain' | 'large'
  /** A second line, smaller. */
  readonly sub?: ReactNode
  /** What is missing before it can be tapped, in place of its own words; null where nothing is. */
  readonly lacks?: string | null
  readonly children: ReactNode
}

/** A button of the crew's screens: large, in the words of its kind, or saying what it waits for. */
export function Button({
  kind = 'plain',
  size = 'plain',
  sub,
  lacks = null,
  className,
  disabled,
  children,
  ...rest
}: ButtonProps) {
  return (
    <button
      type="button"
      {...rest}
      className={className ? `${styles.button} ${className}` : styles.button}
      data-kind={kind}
      data-size={size}
      data-lacks={lacks === null ? undefined : ''}
      disabled={disabled === true || lacks !== null}
    >
      <b>{lacks ?? children}</b>
      {sub !== undefined && lacks === null && <span>{sub}</span>}
    </button>
  )
}

interface ButtonLinkProps {
  readonly href: string
  readonly kind?: ButtonProps['kind']
  readonly size?: ButtonProps['size']
  readonly sub?: ReactNode
  readonly children: ReactNode
}

/** What is done next where that is another page: as large as a button, and a link. */
export function ButtonLink({
  kind = 'plain',
  size = 'plain',
  sub,
  href,
  children,
}: ButtonLinkProps) {
  return (
    <a href={href} className={styles.button} data-kind={kind} data-size={size}>
      <b>{children}</b>
      {sub !== undefined && <span>{sub}</span>}
    </a>
  )
}
