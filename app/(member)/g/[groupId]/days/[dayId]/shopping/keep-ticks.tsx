'use client'

import { useRouter } from 'next/navigation'
import { createContext, type ReactNode, useCallback, useContext, useEffect, useRef, useState } from 'react'
import { Strip } from '@/app/_ui/strip'
import { addTick, type KeptTick, markTick, nextToSend, settleTicks, takeBack, unsent } from '@/shared/supplies/kept-ticks'
import { sendTick } from './send-tick'
import { changeTicks } from './tick-store'
import { useKeptPage } from './use-kept-page'

interface Keeper {
  readonly ticks: readonly KeptTick[]
  readonly add: (tick: KeptTick) => Promise<void>
  readonly back: (tick: KeptTick) => Promise<void>
  readonly drop: (key: string) => Promise<void>
}

const KeeperContext = createContext<Keeper | null>(null)

/** The ticks of this list that the page does not show by itself. */
export function useKeeper(): Keeper {
  const keeper = useContext(KeeperContext)
  if (!keeper) throw new Error('ticks are kept inside KeepTicks')
  return keeper
}

interface KeepTicksProps {
  readonly groupId: string
  readonly dayId: string
  readonly userId: string
  /** When the server wrote this page, by its clock. */
  readonly writtenAt: number
  readonly children: ReactNode
}

const TRY_AGAIN_MS = 15_000

/** Keeps every tick on the phone first, and sends what is kept, in order, whenever there is a network. */
export function KeepTicks({ groupId, dayId, userId, writtenAt, children }: KeepTicksProps) {
  const list = `${userId}/${groupId}/${dayId}`
  const [ticks, setTicks] = useState<readonly KeptTick[]>([])
  const [trouble, setTrouble] = useState<'no-network' | 'sign-in' | null>(null)
  const sending = useRef(false)
  const router = useRouter()
  useKeptPage()

  const change = useCallback(
    async (how: (kept: readonly KeptTick[]) => readonly KeptTick[]) => {
      const kept = await changeTicks(list, how)
      setTicks(kept)
      return kept
    },
    [list],
  )

  const flush = useCallback(async () => {
    if (sending.current) return
    sending.current = true
    let isNew = false
    try {
      let next = nextToSend(await change((kept) => kept))
      while (next) {
        const came = await sendTick(groupId, dayId, next)
        if (typeof came === 'string') return setTrouble(came)
        setTrouble(null)
        isNew = true
        const { key } = next
        next = nextToSend(await change((kept) => markTick(kept, key, came)))
      }
      setTrouble(null)
    } finally {
      sending.current = false
      if (isNew) router.refresh()
    }
  }, [change, groupId, dayId, router])

  useEffect(() => {
    void change((kept) => settleTicks(kept, writtenAt)).then(flush)
  }, [change, flush, writtenAt])

  useEffect(() => {
    const again = () => void (document.visibilityState === 'visible' && flush())
    const timer = setInterval(again, TRY_AGAIN_MS)
    window.addEventListener('online', again)
    document.addEventListener('visibilitychange', again)
    return () => {
      clearInterval(timer)
      window.removeEventListener('online', again)
      document.removeEventListener('visibilitychange', again)
    }
  }, [flush])

  const keeper: Keeper = {
    ticks,
    add: async (tick) => {
      await change((kept) => addTick(kept, tick))
      void flush()
    },
    back: async (tick) => {
      await change((kept) => takeBack(kept, tick, sending.current))
      void flush()
    },
    drop: async (key) => void (await change((kept) => kept.filter((tick) => tick.key !== key))),
  }
  const waiting = unsent(ticks)
  return (
    <KeeperContext value={keeper}>
      {waiting > 0 && (
        <Strip online={trouble === null}>
          {waiting} {waiting === 1 ? 'entry' : 'entries'} kept on this phone, not sent yet.{' '}
          {trouble === 'sign-in' ? 'Sign in again to send them: they stay here.' : 'They go by themselves when there is a network.'}
        </Strip>
      )}
      {children}
    </KeeperContext>
  )
}
