package app.coilside.session

import android.content.Context
import android.os.Handler
import android.os.Looper
import android.os.SystemClock
import android.util.Base64
import app.coilside.Ground
import app.coilside.Signer
import coilside.Action
import coilside.Door
import coilside.DoorFault
import coilside.DoorSetup
import coilside.Effect
import coilside.Outcome
import coilside.Request
import coilside.Screen
import coilside.Turn
import java.util.Locale
import java.util.UUID
import java.util.concurrent.Callable
import java.util.concurrent.Executors
import java.util.concurrent.RejectedExecutionException
import java.util.concurrent.TimeUnit
import java.util.concurrent.atomic.AtomicInteger

/** Whether there is a screen to show. */
enum class Standing { OPENING, OPEN, SHUT }

/** What went wrong with one call. [again] repeats it; none where nothing would be repeated. */
class Trouble(val isFull: Boolean, val detail: String, val again: (() -> Unit)?)

/** Called on the main thread. */
interface SessionListener {
    /** The screen, the standing or the trouble changed. */
    fun changed()
}

/**
 * The conversation with the core: one call at a time, in order, on a thread of its own. What is said here is said on the
 * main thread.
 */
class Session(private val app: Context, private val ground: Ground, private val wakes: WakeRequests) {
    private val thread = Executors.newSingleThreadExecutor { Thread(it, "core") }
    private val main = Handler(Looper.getMainLooper())
    private val pending = AtomicInteger()
    private val listeners = ArrayList<SessionListener>()
    private val jobs = ArrayList<Job>()

    /** Answers that are still to come: a screen read meanwhile would be an older one. */
    private var turns = 0

    @Volatile
    private var closed = false

    // Only on the thread.
    private var door: Door? = null
    private var signer: Signer? = null
    private var wordsOf: String? = null

    /** What is half typed. */
    val fields = Fields(::act)

    /** The words of the shell itself. */
    var words = Words(emptyMap())
        private set

    /** What to show; none before the core is open. */
    var screen: Screen? = null
        private set
    var standing = Standing.OPENING
        private set

    /** Why there is no screen. */
    var shutBecause: Trouble? = null
        private set
    var trouble: Trouble? = null
        private set

    /** Requests for a person in front of the screen that have no outcome yet, in the order in which they came. */
    val wanted = LinkedHashMap<String, Request>()

    /** Requests of [wanted] that a press of this process brought, not a new opening. */
    val fresh = HashSet<String>()

    /** Runs on the main thread after each answer of the core. */
    var afterTurn: () -> Unit = {}

    /** While anything is queued or under way. */
    val busy: Boolean get() = pending.get() > 0

    private class Job(val action: Action?) {
        @Volatile
        var overtaken = false
    }

    /** Opens the core's folder, or tries again. */
    fun open() {
        standing = if (screen == null) Standing.OPENING else standing
        shutBecause = null
        queue(null, { shut(it) }, {}) { opened() }
        tell()
    }

    private fun opened(): Turn {
        val there = door ?: ground.signer(app).let { key ->
            signer = key
            val folder = ground.folder(app).apply { mkdirs() }
            val language = Locale.getDefault().toLanguageTag()
            Door.open(DoorSetup(folder.path, ground.entropy(), ground.now(), language, key.publicKey)).also { door = it }
        }
        return all(there)
    }

    /** The screen with every request that is still open: an alarm that is not among them is taken back. */
    private fun all(open: Door): Turn = open.opened(ground.now()).also { turn ->
        wakes.onlyThese(turn.effects.filter { it.request is Request.WakeAt }.map { it.id }.toSet())
    }

    /** Sends what was done at the screen. */
    fun act(action: Action) {
        if (action is Action.Draft) overtake(action.field)
        if (action is Action.Enter) overtake(action.field)
        val typed = action is Action.Draft || action is Action.Enter
        if (!typed && waits(action)) return
        act(UUID.randomUUID().toString(), action)
    }

    private fun act(id: String, action: Action) {
        val again = { act(id, action) }
        run(Job(action), { trouble = troubleOf(it, again) }) { open ->
            val turn = open.act(id, action, ground.now())
            main.post { fresh += turn.effects.map { it.id } }
            // The step that an alarm belongs to may just have ended.
            if (wakes.isWaiting) all(open) else turn
        }
    }

    /** What waits and is overtaken by newer text of the same field need not be sent. */
    private fun overtake(field: String) {
        for (job in jobs) if ((job.action as? Action.Draft)?.field == field) job.overtaken = true
    }

    /** Whether the same press is still on its way. */
    fun waits(action: Action): Boolean = jobs.any { it.action == action }

    /** Reports how a request ended. */
    fun done(effectId: String, outcome: Outcome) {
        run(
            Job(null),
            { fault ->
                wanted.remove(effectId)
                trouble = troubleOf(fault) { done(effectId, outcome) }
            },
        ) { open ->
            open.done(effectId, outcome, ground.now()).also { main.post { if (!closed) wanted.remove(effectId) } }
        }
    }

    /** Reads the screen again, so that clocks and the outbox are true. */
    fun refresh() {
        if (turns > 0 || screen == null) return
        run(null, { trouble = troubleOf(it, null) }) { open -> open.screen(ground.now()) }
    }

    /** The same from any thread, once for several in a row. */
    fun soonRefresh() {
        main.removeCallbacksAndMessages(REFRESH)
        if (!closed) main.postAtTime(::refresh, REFRESH, SystemClock.uptimeMillis() + REFRESH_MS)
    }

    /** Tells the core how much charge is left, per cent; none while the device charges. */
    fun charged(percent: Int?) {
        run(null, { }) { open ->
            open.charged(percent?.toUByte())
            open.screen(ground.now())
        }
    }

    /** Asks whether a request still has no outcome; true where it cannot be told. [then] runs on the main thread. */
    fun whetherOpen(effectId: String, then: (Boolean) -> Unit) {
        var open = true
        queue(null, { then(true) }, { then(open) }) {
            opened().also { turn -> open = turn.effects.any { it.id == effectId } }
        }
    }

    /** The owner's summary of the sealed visit that is open, as a page; none where that failed, which is then told. */
    fun summary(then: (String?) -> Unit) {
        var page: String? = null
        run(null, { fault ->
            trouble = troubleOf(fault, null)
            then(null)
        }, { page?.let(then) }) { open ->
            page = open.summaryPage(null)
            open.screen(ground.now())
        }
    }

    /** Tells something that went wrong outside of the core. */
    fun say(detail: String) {
        trouble = Trouble(false, detail, null)
        tell()
    }

    /** Asks the core from another thread and waits for its answer; none where the session was closed or the core failed. */
    fun <T> ask(call: (Door) -> T): T? {
        if (closed) return null
        pending.incrementAndGet()
        try {
            return thread.submit(Callable { door?.let(call) }).get()
        } catch (closed: RejectedExecutionException) {
            return null
        } catch (failed: java.util.concurrent.ExecutionException) {
            return null
        } catch (stopped: InterruptedException) {
            Thread.currentThread().interrupt()
            return null
        } finally {
            pending.decrementAndGet()
        }
    }

    /** The device key's signature, from another thread. */
    fun signature(bytes: ByteArray): ByteArray? = ask { signer?.sign(bytes) }

    /** Something else is under way until [end]. */
    fun begin() {
        pending.incrementAndGet()
    }

    fun end() {
        pending.decrementAndGet()
    }

    fun tryAgain() {
        val again = trouble?.again
        trouble = null
        again?.invoke()
        tell()
    }

    fun putAside() {
        trouble = null
        tell()
    }

    fun listen(listener: SessionListener) {
        if (listener !in listeners) listeners += listener
    }

    fun forget(listener: SessionListener) {
        listeners -= listener
    }

    /** Frees the core. What was not done by now is as if the system had ended the process. */
    fun close() {
        closed = true
        listeners.clear()
        fields.close()
        thread.execute {
            door?.close()
            door = null
        }
        thread.shutdown()
        thread.awaitTermination(CLOSE_S, TimeUnit.SECONDS)
    }

    /** One call on the thread, its answer on the main thread. */
    private fun run(job: Job?, failed: (Throwable) -> Unit, answered: () -> Unit = {}, call: (Door) -> Turn) =
        queue(job, failed, answered) { door?.let(call) }

    private fun queue(job: Job?, failed: (Throwable) -> Unit, answered: () -> Unit, call: () -> Turn?) {
        if (closed) return
        job?.let { jobs += it }
        turns += 1
        pending.incrementAndGet()
        thread.execute {
            val outcome = runCatching { if (job?.overtaken == true || closed) null else call()?.let(::signed) }
            val spoken = outcome.getOrNull()?.let(::wordsFor)
            main.post {
                turns -= 1
                if (!closed) {
                    job?.let { jobs -= it }
                    outcome.onFailure(failed)
                    if (outcome.isSuccess) job?.action?.let(fields::acknowledged)
                    spoken?.let { words = it }
                    outcome.getOrNull()?.let(::accept)
                    answered()
                    tell()
                }
                pending.decrementAndGet()
            }
        }
    }

    /** Signs what a turn asks for, with the key that never leaves the device; the answers' screens are newer. */
    private fun signed(turn: Turn): Turn {
        var shown = turn
        val others = ArrayList<Effect>()
        val toSign = ArrayDeque<Pair<String, String>>()
        fun part(effects: List<Effect>) {
            for (effect in effects) {
                when (val request = effect.request) {
                    is Request.SignBytes -> toSign += effect.id to request.bytesBase64
                    // Set at once: it must ring also where the process ends before anything is drawn.
                    is Request.WakeAt -> wakes.wake(effect.id, request.utcMs, request.text)
                    is Request.ReadPacks -> Unit
                    else -> others += effect
                }
            }
        }
        part(turn.effects)
        repeat(SIGNATURES_MAX) {
            val (id, bytes) = toSign.removeFirstOrNull() ?: return@repeat
            val open = door ?: return@repeat
            shown = open.done(id, signatureOver(bytes), ground.now())
            part(shown.effects)
        }
        return Turn(shown.screen, others)
    }

    private fun signatureOver(base64: String): Outcome = try {
        val signature = signer?.sign(Base64.decode(base64, Base64.DEFAULT)) ?: ByteArray(0)
        Outcome.Signature(Base64.encodeToString(signature, Base64.NO_WRAP))
    } catch (locked: java.security.GeneralSecurityException) {
        Outcome.Failed(locked.toString())
    }

    /** The words, where the language of the screens is another one than before. */
    private fun wordsFor(turn: Turn): Words? {
        if (wordsOf == turn.screen.language) return null
        wordsOf = turn.screen.language
        return door?.words()?.let(::Words)
    }

    private fun accept(turn: Turn) {
        screen = turn.screen
        standing = Standing.OPEN
        for (effect in turn.effects) wanted[effect.id] = effect.request
        afterTurn()
    }

    private fun shut(fault: Throwable) {
        shutBecause = troubleOf(fault) { open() }
        if (screen == null) standing = Standing.SHUT else trouble = shutBecause
    }

    private fun troubleOf(fault: Throwable, again: (() -> Unit)?): Trouble {
        val detail = when (fault) {
            is DoorFault.Full -> fault.detail
            is DoorFault.InUse -> fault.detail
            is DoorFault.NoSuch -> fault.detail
            is DoorFault.Failed -> fault.detail
            else -> fault.toString()
        }
        return Trouble(fault is DoorFault.Full, detail, again)
    }

    private fun tell() {
        for (listener in listeners.toList()) listener.changed()
    }

    private companion object {
        const val CLOSE_S = 20L
        const val SIGNATURES_MAX = 8
        const val REFRESH_MS = 250L
        val REFRESH = Any()
    }
}

/** Takes requests to call the person at a time; called on any thread. */
interface WakeRequests {
    /** Whether any alarm waits. */
    val isWaiting: Boolean

    fun wake(effectId: String, utcMs: Long, text: String)

    /** All that are still wanted; the others are taken back. */
    fun onlyThese(open: Set<String>)
}
