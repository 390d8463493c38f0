'use client'

import { useCallback, useEffect, useState } from 'react'
import { addProduct } from '#components/menu/label/add-product.ts'
import { AnotherProduct } from '#components/menu/label/another-product.tsx'
import { labelsOf, saveLabel } from '#components/menu/label/ask-labels.ts'
import { LabelReading } from '#components/menu/label/label-reading.tsx'
import styles from '#components/menu/label/panel.module.css'
import { LabelFormWordsProvider, useLabelFormWords } from '#components/menu/label/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Notch } from '#components/ui/notch.tsx'
import { Note } from '#components/ui/note.tsx'
import { Panel } from '#components/ui/panel.tsx'
import type { HouseLabel, LabelRefusal, MenuLabels } from '#lib/editor/label-http.ts'
import type { Label } from '#lib/station/label.ts'

export interface LabelPanelProps {
  readonly stationId: string
  readonly ingredient: string
  /** Back to where it came from; `saved` where a label was written down. */
  readonly onDone: (saved: boolean) => void
}

/** A server that didn't answer is asked again after so long. */
const AGAIN_AFTER_MS = 2_000

/** null: the product in use; 'new': one that is being named. */
type Chosen = string | null | 'new'

const useSayRefused = () => {
  const words = useLabelFormWords()
  return (refusal: LabelRefusal): string => {
    const house: Readonly<Record<string, string>> = words.refused
    const said = house[refusal.code]
    if (said !== undefined)
      return 'again' in refusal && refusal.again !== undefined
        ? `${said} ${words.againIn(refusal.again)}`
        : said
    return words.sayRefused(refusal as Parameters<typeof words.sayRefused>[0])
  }
}

function Labels({ stationId, ingredient, onDone }: LabelPanelProps) {
  const words = useLabelFormWords()
  const sayRefused = useSayRefused()
  const [labels, setLabels] = useState<MenuLabels | null>(null)
  const [lost, setLost] = useState<string | null>(null)
  const [chosen, setChosen] = useState<Chosen>(null)
  const [refused, setRefused] = useState<string | null>(null)
  const [done, setDone] = useState<string | null>(null)
  const [busy, setBusy] = useState(false)
  const again = useCallback(async () => {
    const answer = await labelsOf(stationId)
    if ('ingredients' in answer) {
      setLabels(answer)
      setLost(null)
    } else setLost(answer.code)
  }, [stationId])
  useEffect(() => {
    void again()
  }, [again])
  useEffect(() => {
    if (lost !== 'failed') return
    const timer = setInterval(() => void again(), AGAIN_AFTER_MS)
    return () => clearInterval(timer)
  }, [lost, again])

  const found = labels?.ingredients.find((one) => one.ingredient === ingredient)
  if (!labels || !found)
    return (
      <Panel
        title={words.heading}
        label={words.heading}
        back={words.back}
        onBack={() => onDone(false)}
      >
        {lost === null && !labels ? (
          <p>{words.connecting}</p>
        ) : (
          <Note kind="no" role="status">
            {sayRefused({ code: lost ?? 'no-such-ingredient' } as LabelRefusal)}
          </Note>
        )}
      </Panel>
    )

  const product = found.products.find((one) => one.product === chosen)
  const now: HouseLabel = product?.label ?? found.label
  const { maker, pack } = product ?? found
  const choose = (next: Chosen) => {
    setRefused(null)
    setDone(null)
    setChosen(next)
  }
  const write = async (label: Label, is: 'same' | 'other', passphrase: string) => {
    setBusy(true)
    setRefused(null)
    const answer = await saveLabel({
      station: stationId,
      ingredient,
      ...(product ? { product: product.product } : {}),
      saw: now.version,
      label,
      is,
      proof: { passphrase },
    })
    setBusy(false)
    if (answer.code === 'stale') await again()
    if (answer.code !== 'done') return setRefused(sayRefused(answer))
    setDone([words.written(found.name), words.told(answer.told.length)].join(' ').trim())
    await again()
  }
  const add = async (named: { maker: string; pack: string }) => {
    const answer = await addProduct(stationId, ingredient, named)
    if ('code' in answer) return setRefused(sayRefused({ code: answer.code } as LabelRefusal))
    await again()
    choose(answer.id)
  }
  const facts = [
    ...(now.label?.readOn ? [words.readOn(now.label.readOn)] : [words.neverRead]),
    ...(now.label?.freeBy ? [words.freeStands[now.label.freeBy]] : []),
    ...(found.alsoAt.length > 0 ? [words.alsoAt(found.alsoAt)] : []),
  ]
  return (
    <Notch about={found.goesInto}>
      <ul className={styles.into} aria-label={words.goesInto(found.goesInto)}>
        {found.goesInto.map((name) => (
          <li key={name} data-notch={name}>
            {name}
          </li>
        ))}
      </ul>
      <Panel
        title={words.title(found.name)}
        label={words.title(found.name)}
        facts={facts}
        back={words.back}
        onBack={() => onDone(done !== null)}
        className={styles.panel ?? ''}
      >
        <nav className={styles.products} aria-label={words.product}>
          {[null, ...found.products.map((one) => one.product)].map((id) => {
            const one = found.products.find((each) => each.product === id) ?? found
            return (
              <Button
                key={id ?? ''}
                kind="quiet"
                aria-pressed={chosen === id}
                sub={id === null && (found.maker ?? found.pack) !== null ? words.inUse : undefined}
                onClick={() => choose(id)}
              >
                {words.productName(one.maker, one.pack, id === null)}
              </Button>
            )
          })}
          <Button kind="quiet" aria-pressed={chosen === 'new'} onClick={() => choose('new')}>
            {words.another}
          </Button>
        </nav>
        {done !== null ? (
          <div className={styles.done}>
            <Note kind="done" role="status">
              {done}
            </Note>
            <Button kind="main" size="large" onClick={() => onDone(true)}>
              {words.back}
            </Button>
          </div>
        ) : chosen === 'new' ? (
          <AnotherProduct refused={refused} onAdd={(m, p) => void add({ maker: m, pack: p })} />
        ) : (
          <LabelReading
            key={chosen ?? ''}
            allergens={labels.allergens}
            today={labels.today}
            name={found.name}
            head={[found.name, maker, pack].filter((one) => one !== null).join(' · ')}
            before={now.label}
            asksWhich={chosen === null}
            busy={busy}
            refused={refused}
            onWrite={(label, is, passphrase) => void write(label, is, passphrase)}
          />
        )}
      </Panel>
    </Notch>
  )
}

/** Reads the label of an ingredient of a station, of the product in use or of another. */
export function LabelPanel(props: LabelPanelProps) {
  return (
    <LabelFormWordsProvider>
      <Labels {...props} />
    </LabelFormWordsProvider>
  )
}
