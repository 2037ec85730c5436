package app.coilside.blocks

import android.annotation.SuppressLint
import android.content.Context
import android.graphics.Canvas
import android.graphics.DashPathEffect
import android.graphics.Paint
import android.graphics.Path
import android.view.View
import app.coilside.view.Palette
import app.coilside.view.Type
import app.coilside.view.dp
import coilside.LineStyle
import coilside.Plot
import coilside.PlotLine

/** The axes and lines of a plot. Its words say the same to whoever does not see it. */
@SuppressLint("ViewConstructor")
class PlotView(context: Context, private val palette: Palette, private val plot: Plot) : View(context) {
    private val pen = Paint(Paint.ANTI_ALIAS_FLAG)
    private val letters = Paint(Paint.ANTI_ALIAS_FLAG).apply {
        color = palette.ink
        textSize = android.util.TypedValue.applyDimension(android.util.TypedValue.COMPLEX_UNIT_SP, Type.SMALL, resources.displayMetrics)
    }
    private val left = (plot.yTicks.maxOfOrNull { letters.measureText(it.text) } ?: 0f) + dp(10)
    private val below = letters.fontSpacing + dp(6)

    init {
        contentDescription = plot.text
    }

    override fun onMeasure(widthSpec: Int, heightSpec: Int) {
        val wide = MeasureSpec.getSize(widthSpec)
        setMeasuredDimension(wide, (wide * HIGH_SHARE).toInt().coerceAtMost(dp(HIGH_MAX_DP)) + below.toInt())
    }

    private fun x(share: Double) = left + share.toFloat() * (width - left - dp(12))

    private fun y(share: Double) = (height - below) - share.toFloat() * (height - below - dp(10))

    override fun onDraw(canvas: Canvas) {
        axes(canvas)
        for (line in plot.lines) {
            pen.dressFor(line.style, palette, this)
            canvas.drawPath(pathOf(line), pen)
        }
    }

    private fun axes(canvas: Canvas) {
        pen.style = Paint.Style.STROKE
        pen.pathEffect = null
        pen.color = palette.line
        pen.strokeWidth = dp(1).toFloat()
        letters.textAlign = Paint.Align.CENTER
        for (tick in plot.xTicks) {
            canvas.drawLine(x(tick.at), y(0.0), x(tick.at), y(1.0), pen)
            canvas.drawText(tick.text, x(tick.at), height - dp(4).toFloat(), letters)
        }
        letters.textAlign = Paint.Align.RIGHT
        for (tick in plot.yTicks) {
            canvas.drawLine(x(0.0), y(tick.at), x(1.0), y(tick.at), pen)
            canvas.drawText(tick.text, left - dp(8), y(tick.at) + letters.textSize * TEXT_MIDDLE, letters)
        }
        pen.color = palette.edge
        pen.strokeWidth = dp(2).toFloat()
        canvas.drawLine(x(0.0), y(1.0), x(0.0), y(0.0), pen)
        canvas.drawLine(x(0.0), y(0.0), x(1.0), y(0.0), pen)
    }

    private fun pathOf(line: PlotLine) = Path().apply {
        line.points.forEachIndexed { at, point ->
            if (at == 0) moveTo(x(point.x), y(point.y)) else lineTo(x(point.x), y(point.y))
        }
    }

    private companion object {
        const val HIGH_SHARE = 0.72f
        const val HIGH_MAX_DP = 420
        const val TEXT_MIDDLE = 0.35f
    }
}

/** How a line of a style looks beside its words. */
@SuppressLint("ViewConstructor")
class PlotKey(context: Context, private val palette: Palette, private val style: LineStyle) : View(context) {
    private val pen = Paint(Paint.ANTI_ALIAS_FLAG)

    init {
        importantForAccessibility = IMPORTANT_FOR_ACCESSIBILITY_NO
    }

    override fun onDraw(canvas: Canvas) {
        pen.dressFor(style, palette, this)
        canvas.drawLine(dp(3).toFloat(), height / 2f, width - dp(3).toFloat(), height / 2f, pen)
    }
}

/** The lines differ in width and in being broken, so that they differ without colour. */
private fun Paint.dressFor(line: LineStyle, palette: Palette, view: View) {
    style = Paint.Style.STROKE
    strokeCap = Paint.Cap.ROUND
    strokeJoin = Paint.Join.ROUND
    pathEffect = null
    when (line) {
        LineStyle.PLAIN -> {
            color = palette.edge
            strokeWidth = view.dp(2).toFloat()
        }
        LineStyle.STRONG -> {
            color = palette.bars[0]
            strokeWidth = view.dp(4.5f).toFloat()
        }
        LineStyle.DASHED -> {
            color = palette.bars[1]
            strokeWidth = view.dp(4).toFloat()
            pathEffect = DashPathEffect(floatArrayOf(view.dp(3).toFloat(), view.dp(8).toFloat()), 0f)
        }
    }
}
