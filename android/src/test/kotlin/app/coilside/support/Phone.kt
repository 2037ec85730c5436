package app.coilside.support

import android.app.Activity
import android.content.Intent
import android.content.res.Configuration
import android.os.Bundle
import android.os.Looper
import android.os.Parcel
import android.view.View
import androidx.test.platform.app.InstrumentationRegistry
import app.coilside.MainActivity
import app.coilside.ShellApp
import app.coilside.session.Session
import coilside.Door
import org.robolectric.Robolectric
import org.robolectric.RuntimeEnvironment
import org.robolectric.Shadows.shadowOf
import org.robolectric.android.controller.ActivityController

/** A phone in the test's hand: the activity, the process behind it, and ways to end both. */
class Phone(val ground: TestGround) {
    private val app: ShellApp get() = RuntimeEnvironment.getApplication() as ShellApp
    private var controller: ActivityController<MainActivity>? = null

    /** How often the process was ended, and the device turned. */
    var deaths = 0
        private set
    var turns = 0
        private set

    val activity: MainActivity get() = checkNotNull(controller) { "no activity is open" }.get()
    val session: Session get() = ShellApp.session(app)

    /** What lies before the eyes: the activity's window. */
    val window: View get() = activity.window.decorView

    init {
        ShellApp.ground = ground
    }

    /** Opens the app, with what the system kept of it if the system ended it. */
    fun open(intent: Intent? = null, kept: Bundle? = null): Phone {
        // A finger is in use, no keys: the focus goes nowhere by itself.
        InstrumentationRegistry.getInstrumentation().setInTouchMode(true)
        val opened = Robolectric.buildActivity(MainActivity::class.java, intent ?: Intent(app, MainActivity::class.java).setAction(Intent.ACTION_MAIN))
        controller = opened
        if (kept == null) opened.create() else opened.create(kept)
        opened.start()
        if (kept != null) opened.restoreInstanceState(kept)
        opened.postCreate(kept).resume().visible().topActivityResumed(true)
        opened.windowFocusChanged(true)
        settle()
        return this
    }

    /** Hands over what the office assigned. */
    fun assigned(json: String) {
        core { it.assigned(json) }
        session.refresh()
        settle()
    }

    /** Asks the core itself, beside the shell. */
    fun <T : Any> core(call: (Door) -> T): T = checkNotNull(session.ask(call)) { "the core did not answer" }

    /** Waits until nothing is queued, under way or undrawn. The patience counts while this process runs: it may be stopped for a while. */
    fun settle() {
        var waits = 0
        var calm = 0
        while (calm < 2) {
            shadowOf(Looper.getMainLooper()).idle()
            if (session.busy) {
                calm = 0
                waits += 1
                Thread.sleep(1)
            } else {
                calm += 1
            }
            check(waits < WAITS_MAX) { "the shell is still busy" }
        }
    }

    /**
     * The process ends and the app is opened again, as the system does it where it needs the memory: what the activity kept goes
     * through a parcel. [abruptly]: nothing is called before the end, and nothing is kept.
     */
    fun die(abruptly: Boolean = false, between: () -> Unit = {}) {
        deaths += 1
        val kept = end(abruptly)
        between()
        open(kept = kept)
    }

    /** The process ends; returns what the system kept. */
    fun end(abruptly: Boolean = false): Bundle? {
        val ended = checkNotNull(controller)
        val kept = if (abruptly) null else Bundle()
        if (kept != null) {
            ended.pause()
            ended.stop()
            ended.saveInstanceState(kept)
        }
        ShellApp.close(app)
        if (kept == null) ended.pause().stop()
        ended.destroy()
        controller = null
        shadowOf(Looper.getMainLooper()).idle()
        return kept?.let(::parcelled)
    }

    /** The process ends while the app is in front: nothing at all is called. What is left of the activity does nothing any more. */
    fun kill() {
        ShellApp.close(app)
        controller = null
    }

    /** The app goes to the background and comes back, in the same process. */
    fun away(between: () -> Unit = {}) {
        controller?.pause()?.stop()
        shadowOf(Looper.getMainLooper()).idle()
        between()
        controller?.restart()?.start()?.resume()
        settle()
    }

    /** The device is turned. */
    fun turn() {
        turns += 1
        qualifiers(if (turns % 2 == 1) "+land" else "+port")
    }

    /** The configuration changes while the app is open: `+land`, `+night`, `+es`. The activity is made anew, as its manifest has it. */
    fun qualifiers(changed: String, fontScale: Float = app.resources.configuration.fontScale) {
        val before = Configuration(activity.resources.configuration)
        RuntimeEnvironment.setQualifiers(changed)
        RuntimeEnvironment.setFontScale(fontScale)
        val now = Configuration(app.resources.configuration)
        // Robolectric would compare the activity's own, which it has changed already, and find nothing.
        val differs = before.diff(now)
        if (differs == 0) return
        val old = activity
        controller?.configurationChange(now, app.resources.displayMetrics, differs)?.visible()?.windowFocusChanged(true)
        settle()
        check(activity !== old) { "the activity outlived a change of its configuration: $differs" }
        val wide = (now.screenWidthDp * activity.resources.displayMetrics.density).toInt()
        check(kotlin.math.abs(window.width - wide) <= 1) { "the window is ${window.width} px wide, the screen $wide" }
    }

    /** The app is opened by another one while it may be open. */
    fun newIntent(intent: Intent) {
        controller?.pause()?.newIntent(intent)?.resume()
        settle()
    }

    /** The activity goes for good, the process with it. */
    fun close() {
        if (controller == null) ShellApp.close(app) else end()
    }

    private fun parcelled(bundle: Bundle): Bundle {
        val parcel = Parcel.obtain()
        try {
            parcel.writeBundle(bundle)
            val bytes = parcel.marshall()
            val other = Parcel.obtain()
            other.unmarshall(bytes, 0, bytes.size)
            other.setDataPosition(0)
            return checkNotNull(other.readBundle(Activity::class.java.classLoader)).also { other.recycle() }
        } finally {
            parcel.recycle()
        }
    }

    private companion object {
        /** Of a millisecond or a little more each. */
        const val WAITS_MAX = 50_000
    }
}
