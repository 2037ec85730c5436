package app.coilside

import app.coilside.support.root
import java.io.File
import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Test

/** Nothing is told to lie at the left or at the right: it lies at the start or at the end, wherever that is. */
class SidesTest {
    private val main = File(root, "android/src/main")

    private fun sides(name: String, text: String): List<String> = text.lines().mapIndexedNotNull { at, line ->
        val unlike = SIDED.findAll(line).any { call -> call.groupValues[2].trim() != call.groupValues[3].trim() }
        if ((NAMED.containsMatchIn(line) || unlike) && name to line.trim() !in PHYSICAL) "$name ${at + 1}: ${line.trim()}" else null
    }

    @Test
    fun `no source names a side`() {
        val sources = main.walkTopDown().filter { it.extension == "kt" || it.extension == "xml" }.toList()
        assertTrue("only ${sources.size} sources were found", sources.size > 60)
        assertEquals("", sources.flatMap { sides(it.name, it.readText()) }.joinToString("\n"))
    }

    @Test
    fun `a side would be found`() {
        for (planted in listOf(
            "row.gravity = Gravity.LEFT", "params.leftMargin = dp(8)", "view.setPadding(dp(8), 0, 0, 0)", "params.setMargins(0, 0, dp(8), 0)",
            "android:layout_marginLeft=\"8dp\"", "<x android:gravity=\"top|right\" />", "setCompoundDrawables(mark, null, null, null)",
            "compoundDrawables[0]", "letters.textAlign = Paint.Align.RIGHT", "addRule(RelativeLayout.ALIGN_PARENT_LEFT)",
        )) assertEquals(planted, 1, sides("A.kt", planted).size)
        for (fine in listOf("Gravity.START", "marginStart = dp(8)", "setPadding(dp(4), 0, dp(4), 0)", "setPaddingRelative(dp(1), 0, dp(2), 0)", "val left = 1")) {
            assertEquals(fine, 0, sides("A.kt", fine).size)
        }
    }

    private companion object {
        val NAMED = Regex(
            "Gravity\\.(LEFT|RIGHT)|\\b(left|right)Margin|\\bALIGN_(PARENT_)?(LEFT|RIGHT)|Align\\.(LEFT|RIGHT)|setCompoundDrawables(WithIntrinsicBounds)?\\(|" +
                "compoundDrawables\\b|(margin|padding|drawable)(Left|Right)=|gravity=\"[^\"]*(left|right)",
        )
        val SIDED = Regex("\\b(setPadding|setMargins)\\(([^,]*),[^,]*,([^,]*),[^,]*\\)")

        /** The system's bars lie where they lie, what is in the middle has what is left at both sides, and a diagram runs one way. */
        val PHYSICAL = setOf(
            "Page.kt" to "setPadding(left, 0, right, if (keyboard) bottom else 0)",
            "Bounded.kt" to "setPadding(spare / 2, 0, spare - spare / 2, 0)",
            "Sheet.kt" to "content.setPadding(content.paddingLeft, content.paddingTop, content.paddingRight, dp(20) + bottom)",
            "PlotView.kt" to "letters.textAlign = Paint.Align.RIGHT",
        )
    }
}
