package app.coilside.view

import android.annotation.SuppressLint
import android.content.Context
import android.graphics.Canvas
import android.graphics.Color
import android.graphics.Paint
import android.graphics.Path
import android.os.Bundle
import android.os.SystemClock
import android.text.SpannableStringBuilder
import android.text.Spanned
import android.text.style.RelativeSizeSpan
import android.view.HapticFeedbackConstants
import android.view.MotionEvent
import android.view.accessibility.AccessibilityNodeInfo
import android.widget.Button
import app.coilside.R
import coilside.Tone

/** What must be held says so; [again] asks for a second press of whoever cannot hold. */
class HoldWords(val hold: String, val again: String)

/**
 * Something to press. With [holdWords] it must be held, because what it does cannot be taken back; a press that cannot be
 * held (a key, a switch, a screen reader) asks for a second one instead.
 */
@SuppressLint("ViewConstructor")
class PressButton(
    context: Context,
    private val palette: Palette,
    private val label: String,
    private val tone: Tone = Tone.PLAIN,
    main: Boolean = false,
    icon: Int? = null,
    private val stacked: Boolean = false,
    here: Boolean = false,
    private val holdWords: HoldWords? = null,
    private val fire: () -> Unit,
) : Button(context) {
    private val round = if (main) MAIN_ROUND_DP else ROUND_DP
    private val fill = Paint(Paint.ANTI_ALIAS_FLAG)
    private val outline = Path()
    private var heldSinceMs = 0L
    private var armed = false
    private val held = Runnable {
        letGo()
        performHapticFeedback(HapticFeedbackConstants.LONG_PRESS)
        fire()
    }
    private val disarm = Runnable { arm(false) }

    init {
        val look = lookOf(tone, palette, main, here)
        val size = if (main) mainSizeOf(label) else if (stacked) Type.SMALL else Type.BODY
        word(spoken(holdWords?.hold), look.words, size, if (tone == Tone.QUIET) Weight.PLAIN else Weight.MEDIUM)
        textAlignment = TEXT_ALIGNMENT_GRAVITY
        gravity = android.view.Gravity.CENTER
        isAllCaps = false
        stateListAnimator = null
        elevation = 0f
        minHeight = dp(if (main && !context.isLow()) TARGET_MAIN_DP else TARGET_DP)
        minimumHeight = minHeight
        minWidth = dp(TARGET_DP)
        minimumWidth = minWidth
        pad(if (main) 20 else if (stacked) 12 else 16, 10)
        background = context.pressable(context.surface(look.fill, look.edge, look.edgeDp, round), palette, round, look.words)
        val mark = icon ?: if (tone == Tone.DANGER || tone == Tone.ATTENTION) glyphOf(tone) else null
        mark?.let { mark(it, look.words) }
        setTag(R.id.tone, tone)
        if (holdWords != null) {
            setTag(R.id.role, "hold")
            fill.color = Color.argb(HOLD_ALPHA, Color.red(look.words), Color.green(look.words), Color.blue(look.words))
        } else {
            setOnClickListener { fire() }
        }
    }

    private fun mark(id: Int, color: Int) {
        val drawing = context.glyphDrawable(id, color).apply { setBounds(0, 0, dp(MARK_DP), dp(MARK_DP)) }
        if (stacked) setCompoundDrawablesRelative(null, drawing, null, null) else setCompoundDrawablesRelative(drawing, null, null, null)
        compoundDrawablePadding = dp(if (stacked) 2 else 10)
    }

    /** The drawing stands beside the words, not at the far edge. */
    private fun nearWords() {
        if (stacked) return nearWordsBelow()
        val drawing = compoundDrawablesRelative[0] ?: return
        val lines = layout ?: return
        val wide = (0 until lines.lineCount).maxOf { lines.getLineWidth(it) }
        val spare = (width - compoundPaddingLeft - compoundPaddingRight - wide).toInt().coerceAtLeast(0)
        val shift = (if (label.isEmpty()) spare + compoundDrawablePadding else spare) / 2
        val at = if (layoutDirection == LAYOUT_DIRECTION_RTL) -shift else shift
        drawing.setBounds(at, 0, at + dp(MARK_DP), dp(MARK_DP))
    }

    private fun nearWordsBelow() {
        val drawing = compoundDrawablesRelative[1] ?: return
        val spare = height - compoundPaddingTop - compoundPaddingBottom - (layout?.height ?: 0)
        val at = spare.coerceAtLeast(0) / 2
        drawing.setBounds(0, at, dp(MARK_DP), at + dp(MARK_DP))
    }

    /** The label, with a smaller line below it. */
    private fun spoken(line: String?): CharSequence {
        if (line == null) return label
        val both = SpannableStringBuilder(label).append('\n').append(line)
        both.setSpan(RelativeSizeSpan(LINE_SHARE), label.length, both.length, Spanned.SPAN_EXCLUSIVE_EXCLUSIVE)
        return both
    }

    @SuppressLint("ClickableViewAccessibility")
    override fun onTouchEvent(event: MotionEvent): Boolean {
        if (holdWords == null) return super.onTouchEvent(event)
        when (event.actionMasked) {
            MotionEvent.ACTION_DOWN -> begin()
            MotionEvent.ACTION_UP, MotionEvent.ACTION_CANCEL -> letGo()
            MotionEvent.ACTION_MOVE -> if (event.x < 0 || event.y < 0 || event.x > width || event.y > height) letGo()
        }
        return true
    }

    private fun begin() {
        parent?.requestDisallowInterceptTouchEvent(true)
        isPressed = true
        heldSinceMs = SystemClock.uptimeMillis()
        postDelayed(held, HOLD_MS)
        invalidate()
    }

    private fun letGo() {
        isPressed = false
        heldSinceMs = 0
        removeCallbacks(held)
        invalidate()
    }

    /** A click that no finger held. */
    override fun performClick(): Boolean {
        if (holdWords == null) return super.performClick()
        val sure = armed
        arm(!sure)
        if (sure) fire()
        return true
    }

    private fun arm(on: Boolean) {
        armed = on
        text = spoken(if (on) holdWords?.again else holdWords?.hold)
        removeCallbacks(disarm)
        if (!on) return
        announceForAccessibility(holdWords?.again)
        postDelayed(disarm, ARMED_MS)
    }

    override fun onInitializeAccessibilityNodeInfo(info: AccessibilityNodeInfo) {
        super.onInitializeAccessibilityNodeInfo(info)
        if (holdWords == null) return
        info.isClickable = true
        info.addAction(AccessibilityNodeInfo.AccessibilityAction(AccessibilityNodeInfo.ACTION_CLICK, label))
    }

    override fun performAccessibilityAction(action: Int, arguments: Bundle?): Boolean {
        if (holdWords != null && action == AccessibilityNodeInfo.ACTION_CLICK) return performClick()
        return super.performAccessibilityAction(action, arguments)
    }

    override fun onDetachedFromWindow() {
        letGo()
        removeCallbacks(disarm)
        super.onDetachedFromWindow()
    }

    override fun onDraw(canvas: Canvas) {
        if (heldSinceMs > 0) {
            val share = ((SystemClock.uptimeMillis() - heldSinceMs).toFloat() / HOLD_MS).coerceIn(0f, 1f)
            val round = dp(round).toFloat()
            outline.reset()
            outline.addRoundRect(0f, 0f, width.toFloat(), height.toFloat(), round, round, Path.Direction.CW)
            canvas.save()
            canvas.clipPath(outline)
            val from = if (layoutDirection == LAYOUT_DIRECTION_RTL) width * (1 - share) else 0f
            canvas.drawRect(from, 0f, from + width * share, height.toFloat(), fill)
            canvas.restore()
            postInvalidateOnAnimation()
        }
        nearWords()
        super.onDraw(canvas)
    }

    private class Look(val fill: Int, val edge: Int, val words: Int, val edgeDp: Int = 2)

    private companion object {
        const val MAIN_ROUND_DP = 18f
        const val MAIN_SP = 22f

        /** Longer words on a main button are set smaller, so that they take two lines and not three. */
        const val WORDY_CHARS = 22
        const val WORDY_SP = 19f
        const val MARK_DP = 26
        const val LINE_SHARE = 0.72f

        /** How long it must be held, milliseconds. */
        const val HOLD_MS = 1500L

        /** How long the second press may take, milliseconds. */
        const val ARMED_MS = 6000L
        const val HOLD_ALPHA = 90

        fun mainSizeOf(label: String) = if (label.length > WORDY_CHARS) WORDY_SP else MAIN_SP

        fun lookOf(tone: Tone, palette: Palette, main: Boolean, here: Boolean): Look = when {
            here -> Look(palette.leadWash, palette.lead, palette.ink, 3)
            main && tone == Tone.DANGER -> Look(palette.danger, palette.danger, palette.onDanger)
            tone == Tone.PRIMARY -> Look(palette.lead, palette.lead, palette.onLead)
            tone == Tone.QUIET -> Look(Color.TRANSPARENT, palette.edge, palette.ink, if (main) 3 else 2)
            tone == Tone.GOOD -> Look(palette.paper, palette.good, palette.good)
            tone == Tone.ATTENTION -> Look(palette.attentionWash, palette.attentionEdge, palette.attention)
            tone == Tone.DANGER -> Look(palette.dangerWash, palette.dangerEdge, palette.danger)
            else -> Look(palette.paper, palette.edge, palette.ink, if (main) 3 else 2)
        }
    }
}
