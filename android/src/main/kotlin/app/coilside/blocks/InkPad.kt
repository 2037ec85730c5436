package app.coilside.blocks

import android.annotation.SuppressLint
import android.content.Context
import android.graphics.Canvas
import android.graphics.Paint
import android.graphics.Path
import android.view.MotionEvent
import android.view.View
import app.coilside.view.Palette
import app.coilside.view.ROUND_SMALL_DP
import app.coilside.view.dp
import app.coilside.view.surface
import kotlin.math.hypot

/**
 * A box as paper is, with a line to write on. One pen at a time draws: a palm or a second finger does not. What is drawn
 * is kept when the pen is lifted.
 */
@SuppressLint("ViewConstructor")
class InkPad(context: Context, private val palette: Palette, private val keep: (String) -> Unit) : View(context) {
    private var wide = 1
    private var high = 1
    private var text = ""
    private var strokes = ArrayList<Stroke>()
    private var pen = NO_PEN
    private val ink = Paint(Paint.ANTI_ALIAS_FLAG).apply {
        color = palette.ink
        style = Paint.Style.STROKE
        strokeWidth = dp(PEN_DP).toFloat()
        strokeCap = Paint.Cap.ROUND
        strokeJoin = Paint.Join.ROUND
    }
    private val rule = Paint().apply {
        color = palette.line
        strokeWidth = dp(2).toFloat()
    }
    private val path = Path()

    /** Whether nothing is drawn. */
    val isEmpty: Boolean get() = strokes.isEmpty()

    init {
        isFocusable = true
    }

    /** Shows what [drawn] holds, in a box of [wide] by [high]; while somebody draws, what they draw. */
    fun show(wide: Int, high: Int, drawn: String, wrong: Boolean) {
        background = context.surface(palette.paper, if (wrong) palette.dangerEdge else palette.edge, if (wrong) 3 else 2, ROUND_SMALL_DP)
        this.wide = wide
        this.high = high
        if (pen != NO_PEN || drawn == text) return
        text = drawn
        strokes = strokesOf(drawn)
        requestLayout()
        invalidate()
    }

    fun clear() {
        strokes.clear()
        kept()
        invalidate()
    }

    override fun onMeasure(widthSpec: Int, heightSpec: Int) {
        val across = MeasureSpec.getSize(widthSpec)
        setMeasuredDimension(across, across * high / wide)
    }

    @SuppressLint("ClickableViewAccessibility")
    override fun onTouchEvent(event: MotionEvent): Boolean {
        when (event.actionMasked) {
            MotionEvent.ACTION_DOWN -> {
                parent.requestDisallowInterceptTouchEvent(true)
                pen = event.getPointerId(0)
                strokes += Stroke()
                goes(event)
            }
            MotionEvent.ACTION_MOVE -> goes(event)
            MotionEvent.ACTION_UP, MotionEvent.ACTION_CANCEL -> lifted()
            MotionEvent.ACTION_POINTER_UP -> if (event.getPointerId(event.actionIndex) == pen) lifted()
        }
        return true
    }

    private fun goes(event: MotionEvent) {
        val at = event.findPointerIndex(pen)
        if (at < 0) return
        for (past in 0 until event.historySize) point(event.getHistoricalX(at, past), event.getHistoricalY(at, past))
        point(event.getX(at), event.getY(at))
        invalidate()
    }

    private fun point(x: Float, y: Float) {
        val stroke = strokes.lastOrNull() ?: return
        if (width == 0 || height == 0 || strokes.sumOf { it.size } >= POINTS_MAX) return
        val across = (x / width * wide).toInt().coerceIn(0, wide)
        val down = (y / height * high).toInt().coerceIn(0, high)
        val near = dp(NEAR_DP).toFloat() * wide / width
        val last = stroke.lastOrNull()
        if (last != null && hypot((across - last.first).toFloat(), (down - last.second).toFloat()) < near) return
        stroke += across to down
    }

    private fun lifted() {
        if (pen == NO_PEN) return
        pen = NO_PEN
        kept()
    }

    private fun kept() {
        text = textOf(wide, high, strokes)
        keep(text)
    }

    override fun onDraw(canvas: Canvas) {
        super.onDraw(canvas)
        val lineAt = height * LINE_SHARE
        canvas.drawLine(width * SIDE_SHARE, lineAt, width * (1 - SIDE_SHARE), lineAt, rule)
        val (across, down) = width.toFloat() / wide to height.toFloat() / high
        for (stroke in strokes) {
            val first = stroke.firstOrNull() ?: continue
            path.reset()
            path.moveTo(first.first * across, first.second * down)
            for (point in stroke) path.lineTo(point.first * across, point.second * down)
            canvas.drawPath(path, ink)
        }
    }

    private companion object {
        const val NO_PEN = -1
        const val PEN_DP = 2.6f
        const val NEAR_DP = 1.2f

        /** More points than the core keeps, and fewer than it takes. */
        const val POINTS_MAX = 16_000
        const val LINE_SHARE = 0.76f
        const val SIDE_SHARE = 0.06f
    }
}
