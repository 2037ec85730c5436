package app.coilside.support

import java.net.InetAddress
import java.net.ServerSocket
import java.net.Socket
import java.util.Random
import java.util.concurrent.CopyOnWriteArrayList
import java.util.concurrent.atomic.AtomicInteger
import kotlin.concurrent.thread

/** A wire to a port of this machine that is cut again and again, after so many bytes as a seed gives. */
class Relay(private val to: Int, seed: Long, private val cutAfterBytesMax: Int) : AutoCloseable {
    private val random = Random(seed)
    private val server = ServerSocket(0, 16, InetAddress.getLoopbackAddress())
    private val open = CopyOnWriteArrayList<Socket>()
    private val cutsSeen = AtomicInteger()

    /** So many connections more are cut; after them the wire holds. */
    private val cutsLeft = AtomicInteger(0)

    /** While false nobody is connected. */
    @Volatile
    var holds = true

    val address: String = "http://127.0.0.1:${server.localPort}"

    /** How often it was cut in the middle of a connection. */
    val cuts: Int get() = cutsSeen.get()

    init {
        thread(isDaemon = true, name = "relay") { while (!server.isClosed) runCatching { server.accept() }.onSuccess(::carry) }
    }

    /** The next [times] connections are cut somewhere in the middle. */
    fun cut(times: Int) = cutsLeft.set(times)

    /** All connections end at once. */
    fun drop() = open.forEach { runCatching { it.close() } }

    override fun close() {
        server.close()
        drop()
    }

    private fun carry(near: Socket) {
        if (!holds) return near.close()
        val far = runCatching { Socket(InetAddress.getLoopbackAddress(), to) }.getOrElse { return near.close() }
        open += listOf(near, far)
        val cutAfter = if (cutsLeft.getAndUpdate { maxOf(0, it - 1) } > 0) 1 + synchronized(random) { random.nextInt(cutAfterBytesMax) } else Int.MAX_VALUE
        val carried = AtomicInteger()
        val end = {
            for (side in listOf(near, far)) runCatching { side.close() }
            open -= setOf(near, far)
        }
        for ((from, into) in listOf(near to far, far to near)) {
            thread(isDaemon = true, name = "relay carries") {
                runCatching {
                    val bytes = ByteArray(4096)
                    while (true) {
                        val length = from.getInputStream().read(bytes)
                        if (length < 0) break
                        val room = cutAfter - carried.getAndAdd(length)
                        into.getOutputStream().write(bytes, 0, minOf(length, maxOf(0, room)))
                        if (length > room) {
                            cutsSeen.incrementAndGet()
                            break
                        }
                    }
                }
                end()
            }
        }
    }
}
