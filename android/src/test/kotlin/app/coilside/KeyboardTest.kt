package app.coilside

import android.graphics.Insets
import android.graphics.Rect
import android.os.Build
import android.view.View
import android.view.WindowInsets
import android.widget.EditText
import android.widget.ScrollView
import android.widget.TextView
import app.coilside.checks.named
import app.coilside.checks.under
import app.coilside.support.Scene
import app.coilside.support.all
import app.coilside.support.input
import app.coilside.support.isWhole
import app.coilside.support.withRole
import coilside.Action
import org.junit.After
import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Rule
import org.junit.Test
import org.junit.rules.TemporaryFolder
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode
import org.robolectric.util.ReflectionHelpers
import org.robolectric.util.ReflectionHelpers.ClassParameter

/** The system's keyboard reaches into the window: what is typed in stays in sight. */
@RunWith(RobolectricTestRunner::class)
@Config(sdk = [26, 34], application = ShellApp::class, qualifiers = "en-w390dp-h844dp-port-mdpi")
@GraphicsMode(GraphicsMode.Mode.NATIVE)
class KeyboardTest {
    @get:Rule
    val folder = TemporaryFolder()
    private val scene: Scene by lazy { Scene(folder.newFolder("store")) }
    private val window get() = scene.phone.window

    @After
    fun close() = scene.phone.close()

    @Test
    fun `a keyboard takes the foot's place, and the field that is typed in stays above it with its words`() {
        scene.due()
        scene.technician.goTo("outbox")
        scene.hand.tap(scene.technician.find(Action.Go("join")))
        val field = checkNotNull(window.input("join-name"))
        scene.hand.tap(field)
        inset(KEYBOARD_PX)
        val top = window.height - KEYBOARD_PX
        val title = window.all().filterIsInstance<TextView>().first { it.text.isNotBlank() }
        assertTrue("the head lies below the system's bar", title.under(window).second >= BAR_PX || window.all().filterIsInstance<ScrollView>().maxBy { it.height }.scrollY > 0)
        assertTrue("the field lost the focus", field.isFocused)
        val (_, y) = field.under(window)
        assertTrue("the field lies at $y to ${y + field.height}, the keyboard begins at $top", y + field.height <= top && field.isWhole())
        val words = window.all().filterIsInstance<TextView>().last { it.text.isNotBlank() && it !is EditText && it.under(window).second < y }
        assertTrue("its words are out of sight: ${words.named()}", words.isWhole())
        assertEquals("the foot takes room above the keyboard", null, window.withRole("foot"))
        for (view in window.all().filter { it.isClickable && it.isShown && Rect().let(it::getGlobalVisibleRect) }) {
            val seen = Rect().also(view::getGlobalVisibleRect)
            assertTrue("below the keyboard: ${view.named()}", seen.bottom <= top || view.under(window).second == 0)
        }
        inset(0)
        val foot = checkNotNull(window.withRole("foot")) { "the foot does not come back" }
        assertTrue("the foot is not whole", foot.isWhole())
    }

    /** The system's bars and a keyboard of so many pixels reach into the window. */
    private fun inset(keyboardPx: Int) {
        val bars = Rect(0, BAR_PX, 0, BAR_PX)
        val insets = if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.R) {
            WindowInsets.Builder()
                .setInsets(WindowInsets.Type.systemBars(), Insets.of(bars))
                .setInsets(WindowInsets.Type.ime(), Insets.of(0, 0, 0, keyboardPx))
                .setVisible(WindowInsets.Type.ime(), keyboardPx > 0)
                .build()
        } else {
            val all = Rect(0, BAR_PX, 0, maxOf(BAR_PX, keyboardPx))
            ReflectionHelpers.callConstructor(
                WindowInsets::class.java,
                ClassParameter.from(Rect::class.java, all), ClassParameter.from(Rect::class.java, null), ClassParameter.from(Rect::class.java, bars),
                ClassParameter.from(Boolean::class.javaPrimitiveType, false), ClassParameter.from(Boolean::class.javaPrimitiveType, false),
            )
        }
        window.findViewById<View>(android.R.id.content).dispatchApplyWindowInsets(insets)
        scene.phone.settle()
    }

    private companion object {
        const val BAR_PX = 24
        const val KEYBOARD_PX = 320
    }
}
