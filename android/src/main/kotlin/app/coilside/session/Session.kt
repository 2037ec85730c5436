package app.coilside.session

import android.content.Context
import android.os.Handler
import android.os.Looper
import android.os.SystemClock
import app.coilside.Ground
import coilside.Action
import coilside.Door
import coilside.Outcome
import coilside.Request
import coilside.Screen
import coilside.Turn
import java.util.UUID

/** Whether there is a screen to show. */
enum class Standing { OPENING, OPEN, SHUT }

/** Called on the main thread. */
interface SessionListener {
    /** The screen, the standing or the trouble changed. */
    fun changed()
}

/**
 * The conversation with the core: one call at a time, in order, on a thread of its own. What is said here is said on the
 * main thread.
 */
class Session(app: Context, private val ground: Ground, wakes: WakeRequests) {
    private val thread = CoreThread()
    private val core = OpenCore(app, ground, wakes)
    private val main = Handler(Looper.getMainLooper())
    private val listeners = ArrayList<SessionListener>()
    private val jobs = ArrayList<Job>()

    /** Answers that are still to come: a screen read meanwhile would be an older one. */
    private var turns = 0

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
    val busy: Boolean get() = thread.busy

    private class Job(val action: Action?) {
        @Volatile
        var overtaken = false
    }

    /** Opens the core's folder, or tries again. */
    fun open() {
        standing = if (screen == null) Standing.OPENING else standing
        shutBecause = null
        queue(null, { shut(it) }, {}) { core.opened() }
        tell()
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
            core.act(open, id, action) { brought -> main.post { fresh += brought } }
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
            open.done(effectId, outcome, ground.now()).also { main.post { if (!thread.isClosed) wanted.remove(effectId) } }
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
        if (!thread.isClosed) main.postAtTime(::refresh, REFRESH, SystemClock.uptimeMillis() + REFRESH_MS)
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
            core.opened().also { turn -> open = turn.effects.any { it.id == effectId } }
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
    fun <T> ask(call: (Door) -> T): T? = thread.ask { core.door?.let(call) }

    /** The device key's signature, from another thread. */
    fun signature(bytes: ByteArray): ByteArray? = ask { core.signature(bytes) }

    /** Something else is under way until [end]. */
    fun begin() = thread.begin()

    fun end() = thread.end()

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
        listeners.clear()
        fields.close()
        thread.close(core::close)
    }

    /** One call on the thread, its answer on the main thread. */
    private fun run(job: Job?, failed: (Throwable) -> Unit, answered: () -> Unit = {}, call: (Door) -> Turn) =
        queue(job, failed, answered) { core.door?.let(call) }

    private fun queue(job: Job?, failed: (Throwable) -> Unit, answered: () -> Unit, call: () -> Turn?) {
        if (thread.isClosed) return
        job?.let { jobs += it }
        turns += 1
        thread.queue({
            val outcome = runCatching { if (job?.overtaken == true || thread.isClosed) null else call()?.let(core::signed) }
            outcome to outcome.getOrNull()?.let(core::wordsFor)
        }) { (outcome, spoken) ->
            turns -= 1
            if (thread.isClosed) return@queue
            job?.let { jobs -= it }
            outcome.onFailure(failed)
            if (outcome.isSuccess) job?.action?.let(fields::acknowledged)
            spoken?.let { words = it }
            outcome.getOrNull()?.let(::accept)
            answered()
            tell()
        }
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

    private fun tell() {
        for (listener in listeners.toList()) listener.changed()
    }

    private companion object {
        const val REFRESH_MS = 250L
        val REFRESH = Any()
    }
}
