package app.coilside.blocks

import android.annotation.SuppressLint
import android.text.InputType
import android.view.Gravity
import android.view.inputmethod.EditorInfo
import android.widget.EditText
import android.widget.LinearLayout
import app.coilside.R
import app.coilside.view.PressButton
import app.coilside.view.ROUND_SMALL_DP
import app.coilside.view.TARGET_DP
import app.coilside.view.Type
import app.coilside.view.Weight
import app.coilside.view.below
import app.coilside.view.dp
import app.coilside.view.pad
import app.coilside.view.surface
import app.coilside.view.word
import app.coilside.view.words
import coilside.Block

/** Words to type. */
@SuppressLint("ViewConstructor")
class EntryBlock(ui: Ui) : BlockView<Block.TextEntry>(ui) {
    private var shown: Block.TextEntry? = null
    private val label = context.words("", ui.palette.ink, Type.BODY, Weight.BOLD)
    private val input = EditText(context)
    private val below = LinearLayout(context).apply { orientation = VERTICAL }

    init {
        addView(label, context.below())
        input.word("", ui.palette.ink)
        input.minimumHeight = dp(TARGET_DP)
        input.pad(16, 14)
        input.isSaveEnabled = false
        input.importantForAutofill = IMPORTANT_FOR_AUTOFILL_NO
        input.addTextChangedListener(Typed { text -> shown?.let { if (ui.fields.text(it.field, it.text) != text) ui.fields.typed(it.field, text) } })
        input.setOnFocusChangeListener { _, focused ->
            edge()
            if (!focused) shown?.let { ui.fields.left(it.field, input.text.toString(), halfTyped = false) }
        }
        input.setOnEditorActionListener { _, action, _ ->
            if (action == EditorInfo.IME_ACTION_DONE) input.clearFocus()
            false
        }
        addView(input, context.below(8))
        addView(below, context.below())
    }

    override fun show(block: Block.TextEntry) {
        if (shown?.lines != block.lines) lines(block.lines.toInt())
        shown = block
        label.text = block.label
        input.setTag(R.id.field, block.field)
        input.contentDescription = block.label
        input.follow(ui.fields.text(block.field, block.text))
        edge()
        below.removeAllViews()
        below.addBelow(block.problem?.let(ui::problem), 8)
        below.addBelow(block.question?.let(ui::question), 8)
        val read = ui.codeReaderOf(block.field) ?: return
        val button = PressButton(context, ui.palette, ui.words.say("code-read"), icon = R.drawable.glyph_camera, fire = read)
        button.setTag(R.id.role, "code-read")
        below.addBelow(button, 10)
        below.addBelow(ui.codeWords?.let { ui.marked(it, ui.palette.ink, R.drawable.glyph_attention) }, 8)
    }

    override fun isStale(): Boolean = ui.codeReaderOf(shown?.field.orEmpty()) != null || isOther()

    private fun isOther(): Boolean = shown?.let { ui.fields.text(it.field, it.text) != input.text.toString() } ?: false

    private fun lines(lines: Int) = with(input) {
        val many = lines > 1
        inputType = InputType.TYPE_CLASS_TEXT or InputType.TYPE_TEXT_FLAG_CAP_SENTENCES or
            if (many) InputType.TYPE_TEXT_FLAG_MULTI_LINE else 0
        imeOptions = EditorInfo.IME_FLAG_NO_EXTRACT_UI or if (many) 0 else EditorInfo.IME_ACTION_DONE
        minLines = lines
        gravity = if (many) Gravity.TOP or Gravity.START else Gravity.CENTER_VERTICAL or Gravity.START
        typeface = Weight.PLAIN.face
    }

    private fun edge() {
        val palette = ui.palette
        val wrong = shown?.problem != null
        val color = if (wrong) palette.dangerEdge else if (input.isFocused) palette.lead else palette.edge
        input.background = context.surface(palette.paper, color, if (wrong || input.isFocused) 3 else 2, ROUND_SMALL_DP)
        input.pad(16, 14)
    }
}
