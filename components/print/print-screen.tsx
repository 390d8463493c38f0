import type { CSSProperties, ReactNode } from 'react'
import styles from '#components/print/print.module.css'
import { usePaperWords } from '#components/print/words.tsx'
import { Button } from '#components/ui/button.tsx'

interface PrintScreenProps {
  readonly title: string
  /** Which rule its pages have. */
  readonly page: 'letter' | 'a4' | 'roll'
  /** Of a page, millimetres. */
  readonly width: number
  /** How many there are; 0 while there is nothing to print. */
  readonly pages: number
  /** What is said on the button of how many there are; as pages where it is left away. */
  readonly count?: string
  /** What it is printed on. */
  readonly on?: ReactNode
  readonly links: ReactNode
  /** What is wrong with what is shown; null: nothing. */
  readonly note: string | null
  /** Beside the pages: what is chosen of them. */
  readonly aside?: ReactNode
  /** It can wait: where there is no room beside, the pages come before it. */
  readonly isAsideLater?: boolean
  readonly children: ReactNode
}

/** Pages on the screen as they will be printed, and above them how they are. */
export function PrintScreen({
  title,
  page,
  width,
  pages,
  count,
  on,
  links,
  note,
  aside,
  isAsideLater = false,
  children,
}: PrintScreenProps) {
  const { frame: words } = usePaperWords()
  const choices = aside !== undefined && <div className={styles.choices}>{aside}</div>
  return (
    <main
      data-paper={page}
      data-beside={aside === undefined ? undefined : ''}
      className={styles.screen}
      style={{ '--paper-mm': width } as CSSProperties}
    >
      <header className={styles.bar}>
        <h1>{title}</h1>
        {on}
        <Button
          kind="main"
          disabled={pages === 0}
          sub={pages > 0 ? (count ?? words.pages(pages)) : undefined}
          onClick={() => window.print()}
        >
          {words.print}
        </Button>
        <nav>{links}</nav>
        <p>{words.how}</p>
      </header>
      <div role="status">{note !== null && <p className={styles.note}>{note}</p>}</div>
      <div className={styles.columns}>
        {!isAsideLater && choices}
        <div className={styles.pages} data-aside="">
          {children}
        </div>
        {isAsideLater && choices}
      </div>
    </main>
  )
}
