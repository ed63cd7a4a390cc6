/**
 * The RP2040 registers that the port uses, with the names and offsets of the RP2040 datasheet; each block names its section. Every register
 * is a word, and is read and written as one.
 */
#ifndef RP2040_H
#define RP2040_H

#include <stdint.h>

#define REG(address) (*(volatile uint32_t *)(uintptr_t)(address))

/** Aliases of a register of the peripherals that set or clear the bits written (2.1.2, "Atomic Register Access"). */
#define SET_BITS(address) REG((address) + 0x2000u)
#define CLEAR_BITS(address) REG((address) + 0x3000u)

/** Subsystem resets (2.14). */
#define RESETS 0x4000C000u
#define RESETS_DONE (RESETS + 0x08u)
#define RESET_DMA (1u << 2)
#define RESET_IO_BANK0 (1u << 5)
#define RESET_PADS_BANK0 (1u << 8)
#define RESET_PIO0 (1u << 10)
#define RESET_PIO1 (1u << 11)
#define RESET_PLL_SYS (1u << 12)
#define RESET_PLL_USB (1u << 13)
#define RESET_PWM (1u << 14)
#define RESET_TIMER (1u << 21)
#define RESET_UART0 (1u << 22)
#define RESET_USBCTRL (1u << 24)

/** Power-on state machine (2.13): what a watchdog reset reaches. */
#define PSM_WDSEL 0x40010008u
#define PSM_ALL 0x1FFFFu
#define PSM_ROSC (1u << 0)
#define PSM_XOSC (1u << 1)

/** Clocks (2.15), the crystal (2.16) and the PLLs (2.18). */
#define CLOCKS 0x40008000u
#define CLK_REF_CTRL (CLOCKS + 0x30u)
#define CLK_REF_SELECTED (CLOCKS + 0x38u)
#define CLK_SYS_CTRL (CLOCKS + 0x3Cu)
#define CLK_SYS_SELECTED (CLOCKS + 0x44u)
#define CLK_PERI_CTRL (CLOCKS + 0x48u)
#define CLK_USB_CTRL (CLOCKS + 0x54u)
#define CLK_ENABLE (1u << 11)
#define XOSC_CTRL 0x40024000u
#define XOSC_STATUS 0x40024004u
#define XOSC_STARTUP 0x4002400Cu
#define PLL_SYS 0x40028000u
#define PLL_USB 0x4002C000u
#define PLL_CS 0x00u
#define PLL_PWR 0x04u
#define PLL_FBDIV 0x08u
#define PLL_PRIM 0x0Cu

/** Pins (2.19). */
#define GPIO_CTRL(pin) REG(0x40014004u + 8u * (pin))
#define FUNCTION_UART 2u
#define FUNCTION_PWM 4u
#define FUNCTION_PIO0 6u
#define FUNCTION_PIO1 7u
#define QSPI_SS_CTRL REG(0x4001800Cu)
#define OVERRIDE_LOW (2u << 8)
#define OVERRIDE_HIGH (3u << 8)

/** UART (4.2), a PL011. */
#define UART0 0x40034000u
#define UART_DR REG(UART0 + 0x00u)
#define UART_FR REG(UART0 + 0x18u)
#define UART_IBRD REG(UART0 + 0x24u)
#define UART_FBRD REG(UART0 + 0x28u)
#define UART_LCR_H REG(UART0 + 0x2Cu)
#define UART_CR REG(UART0 + 0x30u)
#define UART_IFLS REG(UART0 + 0x34u)
#define UART_IMSC REG(UART0 + 0x38u)
#define UART_ICR REG(UART0 + 0x44u)
#define UART_DR_OVERRUN (1u << 11)
#define UART_FR_RX_EMPTY (1u << 4)
#define UART_FR_TX_FULL (1u << 5)

/** PWM (4.5): eight slices of two outputs. */
#define PWM 0x40050000u
#define PWM_SLICE(slice) (PWM + 0x14u * (slice))
#define PWM_CSR 0x00u
#define PWM_CTR 0x08u
#define PWM_CC 0x0Cu
#define PWM_TOP 0x10u
#define PWM_ENABLE (1u << 0)
#define PWM_INVERT_B (1u << 3)
#define PWM_EN REG(PWM + 0xA0u)

/** Timer (4.6): microseconds. */
#define TIMER 0x40054000u
#define TIMER_ALARM0 REG(TIMER + 0x10u)
#define TIMER_RAWL REG(TIMER + 0x28u)
#define TIMER_INTR REG(TIMER + 0x34u)
#define TIMER_INTE REG(TIMER + 0x38u)

/** Watchdog (4.7), which also divides the reference clock to microseconds. */
#define WATCHDOG_CTRL REG(0x40058000u)
#define WATCHDOG_LOAD REG(0x40058004u)
#define WATCHDOG_REASON REG(0x40058008u)
#define WATCHDOG_REASON_TIMER (1u << 0)
#define WATCHDOG_SCRATCH0 REG(0x4005800Cu)
#define WATCHDOG_TICK REG(0x4005802Cu)
#define WATCHDOG_ENABLE (1u << 30)
#define WATCHDOG_TICK_ENABLE (1u << 9)

/** Cause of a chip-level reset (2.12.7). */
#define CHIP_RESET REG(0x40064008u)
#define HAD_POWER_ON (1u << 8)
#define HAD_RUN_PIN (1u << 16)

/** DMA (2.5). */
#define DMA 0x50000000u
#define DMA_READ_ADDR(channel) REG(DMA + 0x40u * (channel) + 0x00u)
#define DMA_WRITE_ADDR(channel) REG(DMA + 0x40u * (channel) + 0x04u)
#define DMA_TRANS_COUNT(channel) REG(DMA + 0x40u * (channel) + 0x08u)
#define DMA_CTRL(channel) REG(DMA + 0x40u * (channel) + 0x10u)
#define DMA_ENABLE (1u << 0)
#define DMA_INCREMENT_READ (1u << 4)
#define DMA_CHAIN_TO(channel) ((channel) << 11)
#define DMA_REQUEST(request) ((request) << 15)
#define DMA_QUIET (1u << 21)
#define DMA_BUSY (1u << 24)
#define DMA_TRIGGER REG(DMA + 0x430u)

/** PIO (3.7): two blocks of four state machines. */
#define PIO(block) (0x50200000u + 0x100000u * (block))
#define PIO_CTRL(block) REG(PIO(block))
#define PIO_TXF(block, machine) (PIO(block) + 0x10u + 4u * (machine))
#define PIO_INSTR_MEM(block, at) REG(PIO(block) + 0x48u + 4u * (at))
#define SM_CLKDIV(block, machine) REG(PIO(block) + 0xC8u + 0x18u * (machine))
#define SM_EXECCTRL(block, machine) REG(PIO(block) + 0xCCu + 0x18u * (machine))
#define SM_SHIFTCTRL(block, machine) REG(PIO(block) + 0xD0u + 0x18u * (machine))
#define SM_INSTR(block, machine) REG(PIO(block) + 0xD8u + 0x18u * (machine))
#define SM_PINCTRL(block, machine) REG(PIO(block) + 0xDCu + 0x18u * (machine))

/** USB (4.1). */
#define USB_DPRAM 0x50100000u
#define USB 0x50110000u
#define USB_ADDR_ENDP REG(USB + 0x00u)
#define USB_MAIN_CTRL REG(USB + 0x40u)
#define USB_SIE_CTRL (USB + 0x4Cu)
#define USB_SIE_STATUS REG(USB + 0x50u)
#define USB_BUFF_STATUS REG(USB + 0x58u)
#define USB_EP_STALL_ARM (USB + 0x68u)
#define USB_MUXING REG(USB + 0x74u)
#define USB_PWR REG(USB + 0x78u)
#define USB_INTE REG(USB + 0x90u)
#define USB_INTS REG(USB + 0x98u)

/** SSI, the flash's bus (4.10). */
#define SSI 0x18000000u
#define SSI_CTRLR0 REG(SSI + 0x00u)
#define SSI_SSIENR REG(SSI + 0x08u)
#define SSI_SER REG(SSI + 0x10u)
#define SSI_BAUDR REG(SSI + 0x14u)
#define SSI_RXFLR REG(SSI + 0x24u)
#define SSI_DR0 REG(SSI + 0x60u)

/** The processor's own (2.4.8, and the ARMv6-M Architecture Reference Manual). */
#define SYST_CSR REG(0xE000E010u)
#define SYST_RVR REG(0xE000E014u)
#define SYST_CVR REG(0xE000E018u)
#define NVIC_ISER REG(0xE000E100u)
#define VTOR REG(0xE000ED08u)
#define IRQ_TIMER0 0u
#define IRQ_USBCTRL 5u
#define IRQ_UART0 20u

/** Sleeps until an interrupt is pending, masked or not. */
static inline void sleep(void)
{
    __asm__ volatile("wfi" ::: "memory");
}

static inline void interrupts_off(void)
{
    __asm__ volatile("cpsid i" ::: "memory");
}

static inline void interrupts_on(void)
{
    __asm__ volatile("cpsie i" ::: "memory");
}

#endif
