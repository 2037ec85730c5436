package app.coilside

import android.Manifest
import android.app.Activity
import android.content.ActivityNotFoundException
import android.content.Context
import android.content.Intent
import android.content.pm.PackageManager
import android.graphics.Bitmap
import android.net.Uri
import android.os.Build
import android.os.Bundle
import android.os.Handler
import android.os.Looper
import android.provider.Settings
import android.view.MotionEvent
import android.view.WindowManager
import android.widget.EditText
import android.widget.FrameLayout
import app.coilside.blocks.AlarmLine
import app.coilside.blocks.LinkBlock
import app.coilside.blocks.Ui
import app.coilside.blocks.clockRuns
import app.coilside.blocks.nextLimit
import app.coilside.effects.Carrying
import app.coilside.effects.Locator
import app.coilside.frame.Edges
import app.coilside.frame.Handover
import app.coilside.frame.Overlays
import app.coilside.frame.Page
import app.coilside.frame.StateView
import app.coilside.send.SendJob
import app.coilside.session.Fields
import app.coilside.session.SessionListener
import app.coilside.session.Standing
import app.coilside.session.Words
import app.coilside.view.MATCH
import app.coilside.view.Palette
import coilside.Action
import coilside.Block
import coilside.DoorFault

/** The one activity: holds its parts together, draws what the core says, and knows nothing of what the screens are about. */
class MainActivity : Activity(), Ui, SessionListener, Overlays.Ways {
    private val main = Handler(Looper.getMainLooper())
    private lateinit var parts: ShellApp.Parts
    private lateinit var root: FrameLayout
    private lateinit var page: Page
    private lateinit var state: StateView
    private lateinit var overlays: Overlays
    private lateinit var carrying: Carrying
    private var menuOpen = false
    private var handover: Handover? = null
    private var touched = false
    private var late = false
    private var isInFront = false
    private var limitMs: Long? = null

    override lateinit var palette: Palette
        private set
    override val context: Context get() = this
    override val words: Words get() = parts.session.words
    override val fields: Fields get() = parts.session.fields
    override val nowMs: Long get() = ShellApp.ground(this).now().utcMs
    override val language: String get() = parts.session.screen?.language ?: "en"

    override fun onCreate(saved: Bundle?) {
        if (Palette.wantsHighContrast(this)) setTheme(R.style.Shell_High)
        super.onCreate(saved)
        palette = Palette(this)
        parts = ShellApp.parts(this)
        parts.camera.resumed(saved?.getString(AWAY_FOR))
        menuOpen = saved?.getBoolean(MENU) ?: false
        carrying = Carrying(this, parts.session, parts.sender)
        page = Page(this, parts.session, parts.scrolled) {
            menuOpen = true
            changed()
        }
        state = StateView(this, palette, parts.session)
        root = FrameLayout(this)
        root.addView(page, FrameLayout.LayoutParams(MATCH, MATCH))
        overlays = Overlays(this, this, root, page, parts, this)
        setContentView(root)
        Edges.draw(this, root, palette) { edges ->
            page.inset(edges.left, edges.top, edges.right, edges.bottom, edges.keyboard)
            overlays.inset(edges.top, edges.bottom)
        }
        changed()
    }

    override fun onStart() {
        super.onStart()
        parts.session.listen(this)
        parts.camera.changed = ::changed
        parts.codes.changed = ::changed
        parts.locator.changed = ::changed
        parts.alarms.changed = ::changed
        parts.sender.want(this)
        carrying.begin()
        parts.session.refresh()
        main.post(ticks)
        main.postDelayed(reads, POLL_MS)
    }

    override fun onResume() {
        super.onResume()
        isInFront = true
        parts.camera.returned()
        changed()
    }

    override fun onPause() {
        isInFront = false
        fields.flushAll()
        super.onPause()
    }

    override fun onStop() {
        main.removeCallbacksAndMessages(null)
        carrying.end()
        parts.session.forget(this)
        parts.sender.leave(this)
        if (!isChangingConfigurations) SendJob.planIfWaiting(this)
        super.onStop()
    }

    override fun onDestroy() {
        page.leave()
        overlays.end()
        super.onDestroy()
    }

    override fun onSaveInstanceState(state: Bundle) {
        super.onSaveInstanceState(state)
        page.leave()
        state.putString(AWAY_FOR, parts.camera.awayFor)
        state.putBoolean(MENU, menuOpen)
    }

    /** A redraw under a finger would take the button away before the press is complete. */
    override fun dispatchTouchEvent(event: MotionEvent): Boolean {
        if (event.actionMasked == MotionEvent.ACTION_DOWN) touched = true
        val taken = super.dispatchTouchEvent(event)
        if (event.actionMasked == MotionEvent.ACTION_UP || event.actionMasked == MotionEvent.ACTION_CANCEL) {
            touched = false
            // A click is posted, and comes first.
            if (late) main.post(::changed)
        }
        return taken
    }

    override fun changed() {
        late = touched
        if (touched || isDestroyed) return
        val screen = parts.session.screen
        if (screen == null || parts.session.standing == Standing.SHUT) {
            if (state.parent == null) root.addView(state, 1, FrameLayout.LayoutParams(MATCH, MATCH))
            state.show()
            overlays.showAlarm()
            return
        }
        root.removeView(state)
        title = screen.title
        page.show(screen) { fields.turned() }
        parts.locator.look()
        if (isInFront) parts.camera.hasten(this)
        overlays.show(screen, menuOpen, handover)
        awake(clockRuns(screen.blocks) || parts.alarms.ringing != null)
        if (clockRuns(screen.blocks)) askForMessages()
    }

    /** While a clock runs the display stays on; an alarm comes over the locked screen. */
    private fun awake(on: Boolean) {
        val flag = WindowManager.LayoutParams.FLAG_KEEP_SCREEN_ON
        if (on) window.addFlags(flag) else window.clearFlags(flag)
        val rings = parts.alarms.ringing != null
        if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.O_MR1) {
            setShowWhenLocked(rings)
            setTurnScreenOn(rings)
        } else {
            @Suppress("DEPRECATION")
            val over = WindowManager.LayoutParams.FLAG_SHOW_WHEN_LOCKED or WindowManager.LayoutParams.FLAG_TURN_SCREEN_ON
            if (rings) window.addFlags(over) else window.clearFlags(over)
        }
    }

    private val ticks = object : Runnable {
        override fun run() {
            val screen = parts.session.screen
            if (screen != null && clockRuns(screen.blocks)) {
                val limit = limitMs
                if (limit != null && nowMs >= limit) parts.session.refresh()
                limitMs = nextLimit(screen.blocks, nowMs)
                page.tick()
            }
            main.postDelayed(this, TICK_MS)
        }
    }

    /** The screen is read now and then, so that clocks and the outbox are true. */
    private val reads = object : Runnable {
        override fun run() {
            parts.session.refresh()
            main.postDelayed(this, POLL_MS)
        }
    }

    override fun press(action: Action) {
        // What stands in a field that is still in use is meant.
        page.findFocus()?.let { if (it is EditText) it.clearFocus() }
        fields.flushAll()
        parts.session.act(action)
    }

    override fun preview(digest: String, show: (Bitmap?) -> Unit) = parts.previews.of(digest, show)

    override fun numberKeysFor(input: EditText?) = page.numberKeysFor(input)

    override fun codeReaderOf(field: String): (() -> Unit)? =
        if (parts.codes.fills(field)) ({ parts.codes.take(this) }) else null

    override val codeWords: String? get() = parts.codes.says?.let(words::say)

    override val alarm: AlarmLine?
        get() {
            val alarms = parts.alarms
            return when {
                !alarms.isWaiting -> null
                !alarms.isHeard -> AlarmLine(words.say("alarm-phone-quiet"), words.say("alarm-allow"), ::allowMessages)
                !alarms.isExact -> AlarmLine(words.say("alarm-phone-late"), words.say("alarm-exact"), ::allowExact)
                alarms.isSaving -> AlarmLine(words.say("alarm-saver"), null, null)
                else -> AlarmLine(words.say("alarm-phone"), null, null)
            }
        }

    /** Asked once, when the first clock runs: the line below it says why. Later the line's own button asks. */
    private fun askForMessages() {
        if (Build.VERSION.SDK_INT < Build.VERSION_CODES.TIRAMISU || !isInFront || parts.alarms.isHeard) return
        val asked = getSharedPreferences("messages", MODE_PRIVATE)
        if (asked.getBoolean(ASKED, false)) return
        asked.edit().putBoolean(ASKED, true).apply()
        requestPermissions(arrayOf(Manifest.permission.POST_NOTIFICATIONS), MESSAGES)
    }

    private fun allowMessages() {
        val canAsk = Build.VERSION.SDK_INT >= Build.VERSION_CODES.TIRAMISU &&
            shouldShowRequestPermissionRationale(Manifest.permission.POST_NOTIFICATIONS)
        if (canAsk) return requestPermissions(arrayOf(Manifest.permission.POST_NOTIFICATIONS), MESSAGES)
        show(Intent(Settings.ACTION_APP_NOTIFICATION_SETTINGS).putExtra(Settings.EXTRA_APP_PACKAGE, packageName))
    }

    private fun allowExact() {
        if (Build.VERSION.SDK_INT < Build.VERSION_CODES.S) return
        show(Intent(Settings.ACTION_REQUEST_SCHEDULE_EXACT_ALARM, Uri.fromParts("package", packageName, null)))
    }

    override fun allowPlace() = requestPermissions(Locator.PERMISSIONS, PLACE)

    override fun onRequestPermissionsResult(request: Int, permissions: Array<out String>, results: IntArray) {
        if (request == PLACE) parts.locator.answered()
        if (request == MESSAGES && results.firstOrNull() == PackageManager.PERMISSION_GRANTED) parts.alarms.setAgain()
        changed()
    }

    @Deprecated("The framework's own way, without any library")
    override fun onActivityResult(request: Int, result: Int, data: Intent?) {
        if (parts.codes.came(request, result)) return
        parts.camera.came(request, result, data)
    }

    override fun follow(link: Block.Link) {
        when {
            link.to == LinkBlock.SUMMARY_PAGE -> handOver(link.label, isToPrint = false)
            link.to == LinkBlock.SUMMARY_PAPER -> handOver(link.label, isToPrint = true)
            link.to.startsWith("tel:", ignoreCase = true) -> show(Intent(Intent.ACTION_DIAL, Uri.parse(link.to)))
            else -> show(Intent(Intent.ACTION_VIEW, Uri.parse(link.to)))
        }
    }

    private fun handOver(title: String, isToPrint: Boolean) {
        parts.session.summary { summary ->
            handover = summary?.let { Handover(it, title, isToPrint) }
            changed()
        }
    }

    private fun show(intent: Intent) {
        try {
            startActivity(intent)
        } catch (none: ActivityNotFoundException) {
            parts.session.say(words.say("open-none"))
        }
    }

    override fun closeMenu() {
        menuOpen = false
        changed()
    }

    override fun closeSummary() {
        handover = null
        changed()
    }

    /** Leaves what lies above, then goes to where the menu begins, then out. */
    @Deprecated("The framework's own way, without any library")
    override fun onBackPressed() {
        if (overlays.back()) return
        val screen = parts.session.screen
        val home = screen?.menu?.firstOrNull()?.press as? Action.Go
        if (screen != null && home != null && home.to != screen.place) press(home) else moveTaskToBack(true)
    }

    private companion object {
        const val AWAY_FOR = "away-for"
        const val MENU = "menu"
        const val ASKED = "asked"
        const val TICK_MS = 500L
        const val POLL_MS = 5_000L

        /** Request codes. */
        const val PLACE = 11
        const val MESSAGES = 12
    }
}
