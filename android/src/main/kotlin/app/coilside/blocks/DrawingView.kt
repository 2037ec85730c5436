package app.coilside.blocks

import android.annotation.SuppressLint
import android.content.Context
import android.graphics.Canvas
import android.graphics.Paint
import android.graphics.Path
import android.view.View
import app.coilside.view.Palette
import app.coilside.view.ROUND_SMALL_DP
import app.coilside.view.dp
import app.coilside.view.surface
import coilside.Drawing
import coilside.DrawingLine

/** What a photograph must show: lines in a box of four by three. What is wanted is drawn strongly. */
@SuppressLint("ViewConstructor")
class DrawingView(context: Context, private val palette: Palette, private val drawing: Drawing, private val widestDp: Int = WIDE_DP) :
    View(context) {
    private val pen = Paint(Paint.ANTI_ALIAS_FLAG).apply {
        style = Paint.Style.STROKE
        strokeCap = Paint.Cap.ROUND
        strokeJoin = Paint.Join.ROUND
    }

    init {
        contentDescription = drawing.text
        background = context.surface(palette.sunk, palette.edge, 1, ROUND_SMALL_DP, dashed = true)
    }

    override fun onMeasure(widthSpec: Int, heightSpec: Int) {
        val wide = minOf(MeasureSpec.getSize(widthSpec), dp(widestDp))
        val high = if (MeasureSpec.getMode(heightSpec) == MeasureSpec.EXACTLY) MeasureSpec.getSize(heightSpec) else wide * 3 / 4
        setMeasuredDimension(if (MeasureSpec.getMode(widthSpec) == MeasureSpec.EXACTLY) MeasureSpec.getSize(widthSpec) else wide, high)
    }

    override fun onDraw(canvas: Canvas) {
        super.onDraw(canvas)
        val wide = minOf(width.toFloat(), height * 4f / 3f)
        val high = wide * 3f / 4f
        canvas.save()
        canvas.translate((width - wide) / 2, (height - high) / 2)
        for (line in drawing.lines.sortedBy { it.wanted }) draw(canvas, line, wide, high)
        canvas.restore()
    }

    private fun draw(canvas: Canvas, line: DrawingLine, wide: Float, high: Float) {
        val path = Path()
        line.points.forEachIndexed { at, point ->
            val (x, y) = point.x.toFloat() * wide to (1 - point.y.toFloat()) * high
            if (at == 0) path.moveTo(x, y) else path.lineTo(x, y)
        }
        pen.color = if (line.wanted) palette.ink else palette.soft
        pen.strokeWidth = wide / DRAWN_WIDE * if (line.wanted) WANTED_STROKE else AROUND_STROKE
        canvas.drawPath(path, pen)
    }

    private companion object {
        const val WIDE_DP = 192

        /** The drawing's own width, in which its strokes are counted. */
        const val DRAWN_WIDE = 160f
        const val WANTED_STROKE = 2.6f
        const val AROUND_STROKE = 1.2f
    }
}
