package app.coilside.blocks

import android.annotation.SuppressLint
import android.content.Context
import android.graphics.Canvas
import android.graphics.Paint
import android.graphics.RectF
import android.view.View
import app.coilside.view.Palette
import app.coilside.view.dp
import coilside.Bar

/** One bar, from zero, with the span of its doubt over it. The first of a chart is hatched, so that two differ without colour. */
@SuppressLint("ViewConstructor")
class ChartBar(
    context: Context,
    private val palette: Palette,
    private val bar: Bar,
    private val index: Int,
    private val scale: ChartScale,
) : View(context) {
    private val paint = Paint(Paint.ANTI_ALIAS_FLAG)
    private val box = RectF()

    init {
        importantForAccessibility = IMPORTANT_FOR_ACCESSIBILITY_NO
    }

    override fun onMeasure(widthSpec: Int, heightSpec: Int) =
        setMeasuredDimension(MeasureSpec.getSize(widthSpec), dp(HIGH_DP))

    private fun x(value: Double): Float {
        val inset = dp(2).toFloat()
        return inset + scale.at(value) * (width - 2 * inset)
    }

    override fun onDraw(canvas: Canvas) {
        val high = height.toFloat()
        fill(palette.sunk)
        canvas.drawRect(0f, 0f, width.toFloat(), high, paint)
        box.set(x(minOf(0.0, bar.value)), dp(4).toFloat(), x(maxOf(0.0, bar.value)), high - dp(4))
        val color = palette.bars[index % palette.bars.size]
        if (index % palette.bars.size == 0) hatched(canvas, color) else {
            fill(color)
            canvas.drawRect(box, paint)
        }
        stroke(color, 2)
        canvas.drawRect(box, paint)
        stroke(palette.ink, 2)
        canvas.drawLine(x(0.0), 0f, x(0.0), high, paint)
        if (bar.doubt > 0) doubt(canvas, high)
    }

    private fun hatched(canvas: Canvas, color: Int) {
        fill(palette.paper)
        canvas.drawRect(box, paint)
        stroke(color, 2)
        canvas.save()
        canvas.clipRect(box)
        var at = box.left - box.height()
        while (at < box.right) {
            canvas.drawLine(at, box.bottom, at + box.height(), box.top, paint)
            at += dp(8)
        }
        canvas.restore()
    }

    /** On paper first, so that it is seen over any bar. */
    private fun doubt(canvas: Canvas, high: Float) {
        val (from, to) = x(bar.value - bar.doubt) to x(bar.value + bar.doubt)
        val (middle, arm) = high / 2 to dp(8).toFloat()
        for ((color, wide) in listOf(palette.paper to 6, palette.ink to 3)) {
            stroke(color, wide)
            canvas.drawLine(from, middle, to, middle, paint)
            canvas.drawLine(from, middle - arm, from, middle + arm, paint)
            canvas.drawLine(to, middle - arm, to, middle + arm, paint)
        }
    }

    private fun fill(color: Int) {
        paint.style = Paint.Style.FILL
        paint.color = color
    }

    private fun stroke(color: Int, wideDp: Int) {
        paint.style = Paint.Style.STROKE
        paint.color = color
        paint.strokeWidth = dp(wideDp).toFloat()
    }

    private companion object {
        const val HIGH_DP = 36
    }
}
