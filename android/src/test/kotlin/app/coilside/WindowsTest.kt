package app.coilside

import android.graphics.Rect
import android.provider.Settings
import android.view.View
import android.widget.EditText
import android.widget.ScrollView
import android.widget.TextView
import app.coilside.checks.Fault
import app.coilside.checks.faults
import app.coilside.checks.named
import app.coilside.checks.under
import app.coilside.support.Scene
import app.coilside.support.all
import app.coilside.support.input
import app.coilside.support.isWhole
import app.coilside.support.withPress
import app.coilside.support.withRole
import coilside.Action
import org.junit.After
import org.junit.Assert.assertEquals
import org.junit.Assert.assertNotNull
import org.junit.Assert.assertTrue
import org.junit.Rule
import org.junit.Test
import org.junit.rules.TemporaryFolder
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.RuntimeEnvironment
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode

/** Windows of other shapes than a phone's: half of one, one that is read from the right, a wide one, one of more contrast. */
@RunWith(RobolectricTestRunner::class)
@Config(sdk = [34], application = ShellApp::class, qualifiers = "en-w390dp-h844dp-port-mdpi")
@GraphicsMode(GraphicsMode.Mode.NATIVE)
class WindowsTest {
    @get:Rule
    val folder = TemporaryFolder()
    private val scene: Scene by lazy { Scene(folder.newFolder("store")) }
    private val window get() = scene.phone.window
    private val screen get() = checkNotNull(scene.phone.session.screen)

    @After
    fun close() = scene.phone.close()

    /** Looks at each place of a visit in the window as it is, and at the menu. */
    private fun everyPlace(look: (String) -> Unit) {
        look("now")
        menu()
        look("menu")
        @Suppress("DEPRECATION")
        scene.phone.activity.onBackPressed()
        scene.phone.settle()
        var seen = 0
        for (place in PLACES) {
            if (screen.menu.none { it.press == Action.Go(place) }) continue
            scene.technician.goTo(place)
            look(place)
            seen += 1
        }
        assertTrue("only $seen places", seen >= 10)
    }

    private fun menu() = scene.hand.tap(checkNotNull(window.withRole("menu-key")) { scene.words() })

    private fun none(found: List<Pair<String, Fault>>) =
        assertEquals(found.joinToString("\n") { (place, fault) -> "$place: ${fault.where} ${fault.what}" }, 0, found.size)

    @Test
    fun `in half a window every screen can be read, its foot can be reached, and there is room left for the work`() {
        scene.waiting()
        scene.phone.qualifiers(HALF)
        val found = ArrayList<Pair<String, Fault>>()
        everyPlace { place -> found += (faults(window) + beyondReach(place)).map { place to it } }
        none(found)
    }

    /** Buttons of the foot that cannot be brought before the eyes, and a page that is all frame. */
    private fun beyondReach(place: String): List<Fault> {
        if (place == "menu") return emptyList()
        val first = screen.foot.firstOrNull()?.let { checkNotNull(window.withPress(it.press)) { "${it.label} is not there" } }
        val hidden = listOfNotNull(first?.takeIf { !it.isWhole() }?.let { Fault("is not in sight", it.named()) })
        val page = window.all().filterIsInstance<ScrollView>().maxBy { it.height }
        val narrow = listOf(page).filter { it.height < window.height * ROOM_SHARE }.map { Fault("has only ${it.height} of ${window.height} px", "the page") }
        val unreachable = screen.foot.drop(1).mapNotNull { button ->
            val view = window.withPress(button.press) ?: return@mapNotNull Fault("is nowhere", button.label)
            view.requestRectangleOnScreen(Rect(0, 0, view.width, view.height), true)
            scene.phone.settle()
            if (view.isWhole()) null else Fault("cannot be brought before the eyes", view.named())
        }
        return hidden + narrow + unreachable
    }

    @Test
    fun `entering half a window and leaving it keeps what is half typed, the place on the page, and the menu`() {
        scene.waiting()
        scene.technician.goTo("break-off")
        scene.hand.type(field("break-off"), "Called aw")
        scene.phone.qualifiers(HALF)
        assertEquals("Called aw", field("break-off").text.toString())
        scene.phone.qualifiers(WHOLE)
        assertEquals("Called aw", field("break-off").text.toString())

        scene.technician.goTo("emergency")
        page().scrollTo(0, DOWN_PX)
        scene.phone.qualifiers(HALF)
        scene.phone.qualifiers(WHOLE)
        assertEquals(DOWN_PX, page().scrollY)

        menu()
        scene.phone.qualifiers(HALF)
        assertNotNull("the menu is gone", window.withPress(Action.Go("outbox")))
        scene.phone.qualifiers(WHOLE)
        scene.hand.tap(scene.technician.find(Action.Go("outbox")))
        assertEquals("outbox", screen.place)
    }

    private fun field(name: String): EditText = checkNotNull(window.input(name)) { scene.words() }

    private fun page() = window.all().filterIsInstance<ScrollView>().maxBy { it.height }

    @Test
    fun `the summary stays when the window changes`() {
        scene.sealed()
        scene.hand.tap(checkNotNull(window.withRole("link")))
        assertNotNull(window.withRole("share"))
        scene.phone.qualifiers(HALF)
        assertNotNull("the summary is gone", window.withRole("share"))
        assertEquals(emptyList<Fault>(), faults(window))
    }

    @Test
    fun `read from the right every screen is whole, and begins at the right`() {
        scene.waiting()
        scene.phone.qualifiers("+ldrtl")
        assertEquals(View.LAYOUT_DIRECTION_RTL, window.layoutDirection)
        val found = ArrayList<Pair<String, Fault>>()
        everyPlace { place -> found += (faults(window) + fromTheLeft()).map { place to it } }
        none(found)
        val key = checkNotNull(window.withRole("menu-key"))
        assertTrue("the menu's key stays where it was", key.under(window).first < window.width / 2)
    }

    /** Words that begin at the left of a place that is much wider than they are. */
    private fun fromTheLeft(): List<Fault> = window.all().filterIsInstance<TextView>().mapNotNull { view ->
        val layout = view.layout ?: return@mapNotNull null
        val startsAtStart = view.textAlignment == View.TEXT_ALIGNMENT_VIEW_START && view.text.isNotBlank()
        val room = view.width - view.compoundPaddingLeft - view.compoundPaddingRight - layout.getLineWidth(0)
        if (startsAtStart && room > ROOM_PX && layout.getLineLeft(0) < room - 2) Fault("begins at the left", view.named()) else null
    }.toList()

    @Test
    fun `on a wide screen no line is longer than is read with ease, and all stands in one column`() {
        scene.waiting()
        scene.phone.qualifiers("+w1280dp-h800dp-land")
        val found = ArrayList<Pair<String, Fault>>()
        everyPlace { place ->
            found += faults(window).map { place to it }
            for (view in window.all().filterIsInstance<TextView>().filter { it.text.isNotBlank() }) {
                if (view.width > WIDEST_DP) found += place to Fault("is ${view.width} dp wide", view.named())
                val middle = view.under(window).first + view.width / 2
                if (Math.abs(middle - window.width / 2) > WIDEST_DP / 2) found += place to Fault("lies beside the column", view.named())
            }
        }
        none(found)
    }

    @Test
    fun `whoever asked the phone for more contrast gets seven to one`() {
        Settings.Secure.putInt(RuntimeEnvironment.getApplication().contentResolver, "high_text_contrast_enabled", 1)
        scene.waiting()
        val found = ArrayList<Pair<String, Fault>>()
        everyPlace { place -> found += faults(window, contrast = 7.0).map { place to it } }
        scene.phone.qualifiers("+night")
        scene.phone.session.act(Action.Go("now"))
        scene.phone.settle()
        everyPlace { place -> found += faults(window, contrast = 7.0).map { "$place at night" to it } }
        none(found)
    }

    private companion object {
        const val HALF = "+w360dp-h320dp-land"
        const val WHOLE = "+w390dp-h844dp-port"
        val PLACES = listOf(
            "phases", "photographs", "readings", "findings", "emergency", "break-off", "outbox", "procedures", "settings", "history", "used", "round",
        )
        const val ROOM_SHARE = 0.65f
        const val ROOM_PX = 20
        const val DOWN_PX = 260

        /** What is read with ease, dp. */
        const val WIDEST_DP = 720
    }
}
