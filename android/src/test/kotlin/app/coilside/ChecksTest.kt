package app.coilside

import android.app.Activity
import android.graphics.Color
import android.os.Looper
import android.text.TextUtils
import android.view.View
import android.view.ViewGroup.LayoutParams
import android.widget.Button
import android.widget.FrameLayout
import android.widget.ImageButton
import android.widget.LinearLayout
import android.widget.ScrollView
import android.widget.TextView
import app.coilside.checks.clipped
import app.coilside.checks.disordered
import app.coilside.checks.faint
import app.coilside.checks.faults
import app.coilside.checks.picture
import app.coilside.checks.readThrough
import app.coilside.checks.small
import app.coilside.checks.unnamed
import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.Robolectric
import org.robolectric.RobolectricTestRunner
import org.robolectric.Shadows.shadowOf
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode

/** Each check finds the fault that it is there for, and lets a good screen pass. */
@RunWith(RobolectricTestRunner::class)
@Config(sdk = [34], application = android.app.Application::class, qualifiers = "w390dp-h844dp-xhdpi")
@GraphicsMode(GraphicsMode.Mode.NATIVE)
class ChecksTest {
    private val activity = Robolectric.buildActivity(Activity::class.java).setup().get()
    private val column = LinearLayout(activity).apply {
        orientation = LinearLayout.VERTICAL
        setBackgroundColor(Color.WHITE)
    }

    private fun text(words: String, colour: Int = Color.BLACK) = TextView(activity).apply {
        text = words
        textSize = 18f
        setTextColor(colour)
    }

    private fun button(words: String) = Button(activity).apply {
        text = words
        minHeight = 200
        setTextColor(Color.BLACK)
        setBackgroundColor(Color.WHITE)
    }

    /** The column on a real screen. */
    private fun shown(vararg views: View): View {
        for (view in views) column.addView(view, view.layoutParams ?: LinearLayout.LayoutParams(LayoutParams.MATCH_PARENT, LayoutParams.WRAP_CONTENT))
        if (column.parent == null) activity.setContentView(column)
        shadowOf(Looper.getMainLooper()).idle()
        return column
    }

    @Test
    fun `a good screen has no faults`() =
        assertEquals(emptyList<Any>(), faults(shown(text("Words that can be read, over as many lines as they need, and then some more."), button("Go on"))))

    @Test
    fun `text that is shortened with dots is found`() {
        val long = text("Words ".repeat(30)).apply {
            maxLines = 1
            ellipsize = TextUtils.TruncateAt.END
        }
        assertEquals("text is shortened with dots", clipped(shown(long)).single().what)
    }

    @Test
    fun `text that is higher than its place is found`() {
        val low = text("Words").apply { layoutParams = LinearLayout.LayoutParams(LayoutParams.MATCH_PARENT, 20) }
        assertTrue(clipped(shown(low)).single().what.startsWith("text is higher than its place"))
    }

    @Test
    fun `a word that is wider than its place is found, and a space at a line's end is none`() {
        val wide = text("W".repeat(80)).apply { setSingleLine() }
        assertTrue(clipped(shown(wide)).single().what.startsWith("text is wider than its place"))
        column.removeAllViews()
        assertEquals(emptyList<Any>(), clipped(shown(text("Words " + " ".repeat(200)))))
    }

    @Test
    fun `what reaches out of its parent is found`() {
        val frame = FrameLayout(activity).apply {
            layoutParams = LinearLayout.LayoutParams(300, 300)
            addView(text("Words"), FrameLayout.LayoutParams(250, 100).apply { leftMargin = 200 })
        }
        assertTrue(clipped(shown(frame)).single().what.startsWith("lies outside of what holds it, across"))
    }

    @Test
    fun `faint text is found by its pixels, and black on white is not`() {
        val grey = shown(text("Words that are grey on white", Color.rgb(0x99, 0x99, 0x99)), text("Words"))
        val found = faint(grey, picture(grey)).single()
        assertTrue(found.what, found.what.startsWith("contrast 2.8"))
        assertTrue(found.where.contains("grey"))
    }

    @Test
    fun `text on a ground of its own is measured against that ground`() {
        val tinted = text("Words", Color.WHITE).apply { setBackgroundColor(Color.rgb(0xFF, 0xC0, 0x40)) }
        assertEquals(1, shown(tinted).let { faint(it, picture(it)) }.size)
    }

    @Test
    fun `a control without a name is found`() {
        val nameless = ImageButton(activity).apply { minimumHeight = 200 }
        assertEquals("has no name", unnamed(shown(nameless)).single().what)
        nameless.contentDescription = "Menu"
        assertEquals(emptyList<Any>(), unnamed(column))
    }

    @Test
    fun `a control that is too small for a glove is found`() {
        val low = button("Go").apply {
            minHeight = 0
            layoutParams = LinearLayout.LayoutParams(LayoutParams.MATCH_PARENT, 60)
        }
        assertEquals("is 390 × 30 dp small", small(shown(low)).single().what)
    }

    @Test
    fun `a control that lies above the one before it is found`() {
        val second = button("Second").apply { translationY = -400f }
        assertEquals(1, disordered(shown(button("First"), second)).size)
        second.translationY = 0f
        assertEquals(emptyList<Any>(), disordered(column))
    }

    @Test
    fun `what a sheet covers is looked at by nobody, and must not be read either`() {
        val below = LinearLayout(activity).apply { addView(text("Words in grey", Color.rgb(0x99, 0x99, 0x99))) }
        val sheet = FrameLayout(activity).apply {
            setBackgroundColor(Color.WHITE)
            addView(text("Words"))
        }
        val frame = FrameLayout(activity).apply {
            addView(below)
            addView(sheet)
        }
        activity.setContentView(frame)
        shadowOf(Looper.getMainLooper()).idle()
        val window = activity.window.decorView
        assertEquals("is covered and can still be read", readThrough(window).single().what)
        below.importantForAccessibility = View.IMPORTANT_FOR_ACCESSIBILITY_NO_HIDE_DESCENDANTS
        assertEquals(emptyList<Any>(), readThrough(window))
        assertEquals(emptyList<Any>(), faint(frame, picture(frame)))
    }

    @Test
    fun `faint text that must be scrolled to is found, and what lies out of sight is not taken for faint`() {
        val grey = text("Words in grey", Color.rgb(0x99, 0x99, 0x99))
        val long = LinearLayout(activity).apply {
            orientation = LinearLayout.VERTICAL
            repeat(60) { addView(text("Line $it that can be read")) }
            addView(grey)
        }
        val scroll = ScrollView(activity).apply {
            setBackgroundColor(Color.WHITE)
            addView(long)
        }
        val found = faults(shown(scroll))
        assertEquals(found.toString(), 1, found.size)
        assertTrue(found.single().where.contains("grey"))
    }
}
