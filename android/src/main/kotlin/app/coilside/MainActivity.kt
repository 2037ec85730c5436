package app.coilside

import android.app.Activity
import android.content.Context
import android.content.Intent
import android.graphics.Bitmap
import android.os.Bundle
import android.os.Handler
import android.os.Looper
import android.view.MotionEvent
import android.widget.EditText
import android.widget.FrameLayout
import app.coilside.blocks.AlarmLine
import app.coilside.blocks.Ui
import app.coilside.blocks.clockRuns
import app.coilside.effects.Carrying
import app.coilside.frame.Edges
import app.coilside.frame.Links
import app.coilside.frame.Overlays
import app.coilside.frame.Page
import app.coilside.frame.Permissions
import app.coilside.frame.StateView
import app.coilside.frame.Ticks
import app.coilside.frame.Wakefulness
import app.coilside.send.SendJob
import app.coilside.session.Fields
import app.coilside.session.SessionListener
import app.coilside.session.Standing
import app.coilside.session.Words
import app.coilside.view.MATCH
import app.coilside.view.Palette
import coilside.Action
import coilside.Block

/** The one activity: holds its parts together, draws what the core says, and knows nothing of what the screens are about. */
class MainActivity : Activity(), Ui, SessionListener, Overlays.Ways {
    private val main = Handler(Looper.getMainLooper())
    private lateinit var parts: ShellApp.Parts
    private lateinit var root: FrameLayout
    private lateinit var page: Page
    private lateinit var state: StateView
    private lateinit var overlays: Overlays
    private lateinit var carrying: Carrying
    private lateinit var links: Links
    private lateinit var permissions: Permissions
    private lateinit var ticks: Ticks
    private val wakefulness = Wakefulness(this)
    private var menuOpen = false
    private var touched = false
    private var late = false
    private var isInFront = false

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
        links = Links(this, parts.session, ::changed)
        permissions = Permissions(this, parts.alarms, parts.locator, links::show)
        page = Page(this, parts.session, parts.scrolled) {
            menuOpen = true
            changed()
        }
        ticks = Ticks(parts.session, page) { nowMs }
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
        saved?.getString(SUMMARY)?.let(links::again)
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
        ticks.begin()
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
        ticks.end()
        carrying.end()
        parts.session.forget(this)
        parts.sender.leave(this)
        if (!isChangingConfigurations) SendJob.planIfWaiting(this, parts.session)
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
        state.putString(SUMMARY, links.handover?.title)
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
        if (title != screen.title) title = screen.title
        page.show(screen) { fields.turned() }
        parts.locator.look()
        if (isInFront) parts.camera.hasten(this)
        overlays.show(screen, menuOpen, links.handover)
        val runs = clockRuns(screen.blocks)
        wakefulness.show(runs, parts.alarms.ringing != null)
        if (runs && isInFront) permissions.askForMessages()
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

    override val alarm: AlarmLine? get() = permissions.alarmLine(words)

    override fun allowPlace() = permissions.askForPlace()

    override fun onRequestPermissionsResult(request: Int, permissions: Array<out String>, results: IntArray) {
        this.permissions.answered(request, results)
        changed()
    }

    @Deprecated("The framework's own way, without any library")
    override fun onActivityResult(request: Int, result: Int, data: Intent?) {
        if (parts.codes.came(request, result)) return
        parts.camera.came(request, result, data)
    }

    override fun follow(link: Block.Link) = links.follow(link)

    override fun closeMenu() {
        menuOpen = false
        changed()
    }

    override fun closeSummary() = links.closeSummary()

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
        const val SUMMARY = "summary"
    }
}
