package app.coilside.send

import android.content.Context
import android.net.ConnectivityManager
import android.util.Base64
import app.coilside.ShellApp
import app.coilside.session.Session
import coilside.Link
import coilside.Network
import coilside.Sending
import java.util.concurrent.Executors
import java.util.concurrent.Semaphore
import java.util.concurrent.TimeUnit

/**
 * Carries what the core wants sent to the office, and its answers back: one at a time for the whole process, as long as
 * somebody wants it. What to send, when to repeat and what an answer means is the core's to say.
 */
class Sender(private val app: Context, private val session: Session) {
    private val now = { ShellApp.ground(app).now() }
    private val carriers = Executors.newCachedThreadPool { Thread(it, "to the office") }
    private val watch = Executors.newSingleThreadScheduledExecutor { Thread(it, "request watch") }
    private val wake = Semaphore(0)

    /** Who wants it to send, and until when on the clock that no one can set, milliseconds; none where that can go on. */
    private val wanting = HashMap<Any, Long?>()

    /** Requests under way. */
    private val out = HashSet<Carriage>()
    private var loop: Thread? = null

    /** Whether a request is under way. */
    val isCarrying: Boolean get() = synchronized(this) { out.isNotEmpty() }

    /** Whether anybody wants it to send. */
    val isWanted: Boolean get() = synchronized(this) { wanting.isNotEmpty() }

    /** Sends until [who] no longer wants it. [forMs]: how long that will be at most; none where it can go on. */
    @Synchronized
    fun want(who: Any, forMs: Long? = null) {
        wanting[who] = forMs?.let { now().monoMs + it }
        if (loop != null) return hurry()
        loop = Thread(::run, "sender").also { it.start() }
    }

    /** How long sending may still go on, milliseconds; none where somebody sees no end of it. */
    @Synchronized
    private fun leftMs(): Long? {
        val ends = wanting.values.map { it ?: return null }
        return ends.maxOrNull()?.let { (it - now().monoMs).coerceAtLeast(0) }
    }

    /** [who] no longer wants it. With nobody left, what is under way is broken off where [atOnce]. */
    @Synchronized
    fun leave(who: Any, atOnce: Boolean = false) {
        wanting -= who
        if (wanting.isNotEmpty()) return
        loop?.interrupt()
        loop = null
        if (atOnce) out.toList().forEach { it.breakOff() }
    }

    /** Something was done that the office may have to hear of, or the network came back. */
    fun hurry() = wake.release()

    private fun run() {
        var pauseMs = PAUSE_SHORT_MS
        while (goesOn()) {
            if (begin()) pauseMs = PAUSE_SHORT_MS
            try {
                if (wake.tryAcquire(pauseMs, TimeUnit.MILLISECONDS)) {
                    wake.drainPermits()
                    pauseMs = PAUSE_SHORT_MS
                } else {
                    pauseMs = (pauseMs * 2).coerceAtMost(PAUSE_LONG_MS)
                }
            } catch (left: InterruptedException) {
                return
            }
        }
    }

    @Synchronized
    private fun goesOn(): Boolean = loop === Thread.currentThread() && wanting.isNotEmpty()

    /** Begins what the core wants sent now, each request beside the others. Returns whether there was anything. */
    private fun begin(): Boolean {
        sign()
        val network = network()
        val requests = session.ask { it.nextRequests(network, now()) } ?: return false
        for (request in requests) carry(request)
        return requests.isNotEmpty()
    }

    /** What is to be signed comes before anything else; the key never leaves the device. */
    private fun sign() {
        val asked = session.ask { it.nextSign() } ?: return
        val signature = session.signature(asked.bytes) ?: return
        session.ask { it.signed(asked.id, Base64.encodeToString(signature, Base64.NO_WRAP)) }
    }

    private fun carry(request: Sending) {
        val carriage = Carriage(request)
        synchronized(this) { out += carriage }
        carriers.execute {
            val late = watch.schedule({ carriage.breakOff() }, REQUEST_MAX_MS, TimeUnit.MILLISECONDS)
            try {
                val reply = carriage.run()
                session.ask { it.answered(request.id, reply.status.toUShort(), reply.headers, reply.body, now()) }
            } finally {
                late.cancel(false)
                synchronized(this) { out -= carriage }
                session.soonRefresh()
                hurry()
            }
        }
    }

    /** What carries requests now. The phone has no office of its own: one is joined. */
    private fun network(): Network {
        val manager = app.getSystemService(ConnectivityManager::class.java)
        val link = when {
            manager.activeNetwork == null -> Link.NONE
            manager.isActiveNetworkMetered -> Link.METERED
            else -> Link.UNMETERED
        }
        return Network(link, leftMs(), false)
    }

    fun close() {
        synchronized(this) {
            wanting.clear()
            loop?.interrupt()
            loop = null
            out.toList().forEach { it.breakOff() }
        }
        watch.shutdownNow()
        carriers.shutdown()
    }

    private companion object {
        /** The pause while there is work to do, milliseconds. */
        const val PAUSE_SHORT_MS = 200L

        /** The longest pause, milliseconds. */
        const val PAUSE_LONG_MS = 5_000L

        /** The longest that one whole request may take; the core gives an unanswered one up a little later, milliseconds. */
        const val REQUEST_MAX_MS = 80_000L
    }
}
