package app.coilside.frame

import android.annotation.SuppressLint
import android.view.HapticFeedbackConstants
import android.view.KeyEvent
import android.view.View
import android.widget.EditText
import android.widget.LinearLayout
import app.coilside.R
import app.coilside.blocks.Ruled
import app.coilside.blocks.Ui
import app.coilside.view.Column
import app.coilside.view.MATCH
import app.coilside.view.MEASURE_DP
import app.coilside.view.PressButton
import app.coilside.view.WRAP
import app.coilside.view.below
import app.coilside.view.column
import app.coilside.view.dp
import app.coilside.view.isLow
import app.coilside.view.isTight
import app.coilside.view.pad
import app.coilside.view.row
import coilside.Tone
import java.text.DecimalFormatSymbols
import java.util.Locale

/** Large keys for numbers, in place of the foot while a number is typed. A wet glove hits them. */
@SuppressLint("ViewConstructor")
class NumberKeys(private val ui: Ui) : LinearLayout(ui.context) {
    private var input: EditText? = null
    private var builtFor = ""
    private val rows = context.column()

    init {
        orientation = VERTICAL
        setBackgroundColor(ui.palette.paper)
        addView(View(context).apply { background = Ruled(ui.palette.line, dp(1)) }, context.below().apply { height = dp(1) })
        val column = Column(context, dp(MEASURE_DP))
        column.addView(rows, android.widget.FrameLayout.LayoutParams(MATCH, WRAP))
        addView(column, context.below())
        rows.pad(10, if (context.isLow()) 4 else 8)
        visibility = GONE
    }

    /** Shows the keys for [field], or hides them. */
    fun showFor(field: EditText?) {
        input = field
        visibility = if (field == null) GONE else VISIBLE
        if (field == null || builtFor == ui.language) return
        builtFor = ui.language
        rows.removeAllViews()
        val decimal = DecimalFormatSymbols.getInstance(Locale.forLanguageTag(ui.language)).decimalSeparator.toString()
        row(digit("1"), digit("2"), digit("3"), key("⌫", "delete", ui.words.say("key-delete"), R.drawable.glyph_delete) { delete() })
        row(digit("4"), digit("5"), digit("6"), key("±", "sign", ui.words.say("sign")) { turnSign() })
        row(digit("7"), digit("8"), digit("9"), key(decimal, ".", ui.words.say("key-decimal")) { type(decimal) })
        row(digit("0"), done())
    }

    private fun row(vararg keys: View) {
        val row = context.row()
        keys.forEachIndexed { at, key ->
            val high = dp(if (context.isLow()) LOW_DP else if (context.isTight()) TIGHT_DP else HIGH_DP)
            row.addView(key, LayoutParams(0, high, COLUMNS / keys.size).apply { marginStart = if (at == 0) 0 else dp(GAP_DP) })
        }
        rows.addView(row, context.below(if (rows.childCount == 0) 0 else GAP_DP))
    }

    private fun digit(digit: String) = key(digit, digit, digit) { type(digit) }

    private fun done() = PressButton(context, ui.palette, ui.words.say("key-done"), Tone.PRIMARY, main = true) { input?.clearFocus() }
        .apply { setTag(R.id.role, "key:done") }

    private fun key(label: String, role: String, said: String, icon: Int? = null, press: () -> Unit): View {
        val key = PressButton(context, ui.palette, if (icon == null) label else "", icon = icon) {
            performHapticFeedback(HapticFeedbackConstants.KEYBOARD_TAP)
            press()
        }
        key.setTextSize(android.util.TypedValue.COMPLEX_UNIT_DIP, KEY_SP)
        key.typeface = app.coilside.view.Weight.BOLD.face
        key.setPadding(0, 0, 0, 0)
        key.contentDescription = said
        key.setTag(R.id.role, "key:$role")
        return key
    }

    private fun type(text: String) {
        val field = input ?: return
        field.text.replace(field.selectionStart.coerceAtLeast(0), field.selectionEnd.coerceAtLeast(0), text)
    }

    private fun delete() {
        input?.dispatchKeyEvent(KeyEvent(KeyEvent.ACTION_DOWN, KeyEvent.KEYCODE_DEL))
        input?.dispatchKeyEvent(KeyEvent(KeyEvent.ACTION_UP, KeyEvent.KEYCODE_DEL))
    }

    private fun turnSign() {
        val field = input ?: return
        val bare = field.text.toString().trimStart(' ', '-', '−')
        field.setText(if (bare == field.text.toString()) "-$bare" else bare)
        field.setSelection(field.text.length)
    }

    private companion object {
        const val COLUMNS = 4f
        const val HIGH_DP = 62
        const val TIGHT_DP = 56
        const val LOW_DP = 48
        const val GAP_DP = 8
        const val KEY_SP = 28f
    }
}
