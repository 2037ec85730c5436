package app.coilside.blocks

import android.annotation.SuppressLint
import android.content.res.Configuration
import android.graphics.Color
import android.text.InputType
import android.view.Gravity
import android.view.inputmethod.EditorInfo
import android.widget.EditText
import android.widget.LinearLayout
import app.coilside.R
import app.coilside.view.ROUND_SMALL_DP
import app.coilside.view.Type
import app.coilside.view.WRAP
import app.coilside.view.Weight
import app.coilside.view.below
import app.coilside.view.beside
import app.coilside.view.digits
import app.coilside.view.dp
import app.coilside.view.pad
import app.coilside.view.row
import app.coilside.view.surface
import app.coilside.view.word
import app.coilside.view.words
import coilside.Block

/** A number with its unit, and the value of the visit before beside it. It is typed with large keys of our own. */
@SuppressLint("ViewConstructor")
class NumberBlock(ui: Ui) : BlockView<Block.Number>(ui) {
    private var shown: Block.Number? = null
    private val label = context.words("", ui.palette.ink, Type.BODY, Weight.BOLD)
    private val input = EditText(context)
    private val unit = context.words("", ui.palette.soft, Type.STRONG, Weight.MEDIUM)
    private val box = context.row()
    private val below = LinearLayout(context).apply { orientation = VERTICAL }

    init {
        background = context.surface(ui.palette.paper, ui.palette.line, 1)
        pad(16, 14)
        addView(label, context.below())
        dress()
        box.gravity = Gravity.CENTER_VERTICAL
        box.minimumHeight = dp(BOX_DP)
        box.addView(input, context.beside())
        box.addView(unit, LinearLayout.LayoutParams(WRAP, WRAP).apply { marginEnd = dp(16) })
        addView(box, context.below(8))
        addView(below, context.below())
        edge(wrong = false)
    }

    private fun dress() = with(input) {
        digits().word("", ui.palette.ink, Type.NUMBER, Weight.BOLD)
        background = null
        setPaddingRelative(dp(16), dp(10), dp(8), dp(10))
        inputType = InputType.TYPE_CLASS_NUMBER or InputType.TYPE_NUMBER_FLAG_DECIMAL or InputType.TYPE_NUMBER_FLAG_SIGNED
        // The decimal sign may be a comma or a point; the core reads both.
        keyListener = android.text.method.DigitsKeyListener.getInstance("0123456789.,-−")
        imeOptions = EditorInfo.IME_ACTION_DONE or EditorInfo.IME_FLAG_NO_EXTRACT_UI
        setSingleLine()
        isSaveEnabled = false
        setSelectAllOnFocus(true)
        importantForAutofill = IMPORTANT_FOR_AUTOFILL_NO
        showSoftInputOnFocus = resources.configuration.keyboard != Configuration.KEYBOARD_NOKEYS
        addTextChangedListener(Typed { text -> shown?.let { if (ui.fields.text(it.field, it.text) != text) ui.fields.typed(it.field, text) } })
        setOnFocusChangeListener { _, focused ->
            edge(shown?.problem != null)
            if (focused) enter() else leave()
        }
        setOnEditorActionListener { _, _, _ ->
            clearFocus()
            true
        }
    }

    /** What stood there is replaced by the first key: with gloves nobody sets a cursor. */
    private fun enter() {
        ui.numberKeysFor(input)
        input.post { if (input.isFocused) input.selectAll() }
    }

    private fun leave() {
        ui.numberKeysFor(null)
        val block = shown ?: return
        val text = input.text.toString()
        val halfTyped = text.isNotEmpty() && block.taken == null && block.problem == null && block.question == null
        ui.fields.left(block.field, text, halfTyped)
    }

    override fun show(block: Block.Number) {
        shown = block
        val palette = ui.palette
        label.text = block.label
        input.setTag(R.id.field, block.field)
        input.contentDescription = listOf(block.label, block.unit).filter { it.isNotEmpty() }.joinToString(", ")
        input.follow(ui.fields.text(block.field, block.text))
        unit.text = block.unit
        unit.visibility = if (block.unit.isEmpty()) GONE else VISIBLE
        edge(block.problem != null)
        below.removeAllViews()
        below.addBelow(block.problem?.let(ui::problem), 8)
        below.addBelow(block.question?.let(ui::question), 8)
        below.addBelow(block.taken?.let(ui::inRecord), 8)
        below.addBelow(block.before?.let { context.words(it, palette.ink).digits() }, 8)
        val hint = block.hint.ifEmpty { null }
        below.addBelow(hint?.let { context.words(it, palette.soft, Type.SMALL) }, 6)
        below.addBelow(block.couldNot?.let { ui.button(it) }, 10)
    }

    override fun isStale(): Boolean = shown?.let { ui.fields.text(it.field, it.text) != input.text.toString() } ?: false

    private fun edge(wrong: Boolean) {
        val palette = ui.palette
        val color = if (wrong) palette.dangerEdge else if (input.isFocused) palette.lead else palette.edge
        val wide = if (wrong || input.isFocused) 3 else 2
        box.background = context.surface(palette.paper, color, wide, ROUND_SMALL_DP)
        input.setBackgroundColor(Color.TRANSPARENT)
    }

    private companion object {
        const val BOX_DP = 72
    }
}
